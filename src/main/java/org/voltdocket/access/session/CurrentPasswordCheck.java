package org.voltdocket.access.session;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.PasswordVerifier;
import org.voltdocket.access.signin.SignInAttempt;
import org.voltdocket.access.signin.SignInMethod;
import org.voltdocket.access.signin.SignInRecorder;
import org.voltdocket.access.signin.SignInThrottle;
import org.voltdocket.kernel.RequestException;

/** Asks for the current password before a change that matters, within the limits of the sign-in. */
@Component
public class CurrentPasswordCheck {

    private final AccountService accounts;
    private final PasswordVerifier passwords;
    private final SignInThrottle throttle;
    private final SignInRecorder recorder;

    CurrentPasswordCheck(
            AccountService accounts, PasswordVerifier passwords, SignInThrottle throttle, SignInRecorder recorder) {
        this.accounts = accounts;
        this.passwords = passwords;
        this.throttle = throttle;
        this.recorder = recorder;
    }

    /**
     * Returns where the password is right, or the account has none.
     *
     * @throws RequestException 400 with the field {@code current} where it is wrong, 429 after too many attempts
     */
    public void require(AccountPrincipal who, String current, HttpServletRequest request) {
        if (!accounts.hasPassword(who.account())) {
            return;
        }
        String name = who.actor().user();
        SignInAttempt attempt = new SignInAttempt(name, request.getRemoteAddr(), "");
        throttle.attempt(attempt);
        if (passwords.check(name, current).isEmpty()) {
            recorder.failed(name, request.getRemoteAddr(), SignInMethod.PASSWORD);
            throw RequestException.invalid(
                    "account-refused", "current", "The current password is wrong. Nothing was changed.");
        }
        throttle.succeeded(attempt);
    }
}
