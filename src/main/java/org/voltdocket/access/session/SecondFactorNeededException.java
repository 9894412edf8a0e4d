package org.voltdocket.access.session;

import org.springframework.security.core.AuthenticationException;
import org.voltdocket.access.AccountPrincipal;

/** The password is right, and the account has a second factor that is asked for next. */
public class SecondFactorNeededException extends AuthenticationException {

    private final transient AccountPrincipal who;
    private final int earlierFailures;

    SecondFactorNeededException(AccountPrincipal who, int earlierFailures) {
        super("The code of the second factor is missing.");
        this.who = who;
        this.earlierFailures = earlierFailures;
    }

    AccountPrincipal who() {
        return who;
    }

    int earlierFailures() {
        return earlierFailures;
    }
}
