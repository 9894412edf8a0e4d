package org.voltdocket.access.web;

import org.springframework.security.core.AuthenticationException;
import org.voltdocket.kernel.RequestException;

/** A refusal, such as after too many attempts, in the form that the filters of Spring Security handle. */
class SignInRefusedException extends AuthenticationException {

    private final transient RequestException refusal;

    SignInRefusedException(RequestException refusal) {
        super(refusal.getMessage(), refusal);
        this.refusal = refusal;
    }

    RequestException refusal() {
        return refusal;
    }
}
