package org.voltdocket.access.session;

import org.springframework.security.core.AuthenticationException;
import org.voltdocket.kernel.RequestException;

/** A refusal, such as after too many attempts, in the form that the filters of Spring Security handle. */
public class SignInRefusedException extends AuthenticationException {

    private final transient RequestException refusal;

    public SignInRefusedException(RequestException refusal) {
        super(refusal.getMessage(), refusal);
        this.refusal = refusal;
    }

    public RequestException refusal() {
        return refusal;
    }
}
