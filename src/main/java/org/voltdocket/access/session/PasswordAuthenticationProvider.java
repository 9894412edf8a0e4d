package org.voltdocket.access.session;

import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.WebAuthenticationDetails;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.PasswordVerifier;
import org.voltdocket.access.factor.SecondFactorService;
import org.voltdocket.access.signin.SignInAttempt;
import org.voltdocket.access.signin.SignInMethod;
import org.voltdocket.access.signin.SignInRecorder;
import org.voltdocket.access.signin.SignInThrottle;
import org.voltdocket.access.signin.SignedIn;
import org.voltdocket.kernel.RequestException;

/** Signs in by name and password, for the form and for HTTP Basic alike. Counts each attempt before it hashes. */
@Component
public class PasswordAuthenticationProvider implements AuthenticationProvider {

    private final PasswordVerifier passwords;
    private final SecondFactorService factors;
    private final SignInThrottle throttle;
    private final SignInRecorder recorder;

    PasswordAuthenticationProvider(
            PasswordVerifier passwords, SecondFactorService factors, SignInThrottle throttle, SignInRecorder recorder) {
        this.passwords = passwords;
        this.factors = factors;
        this.throttle = throttle;
        this.recorder = recorder;
    }

    @Override
    public Authentication authenticate(Authentication asked) {
        boolean form = asked.getDetails() instanceof SignInDetails;
        SignInMethod method = form ? SignInMethod.PASSWORD : SignInMethod.TOKEN_REQUEST;
        SignInAttempt attempt = attempt(asked);
        AccountPrincipal who;
        try {
            throttle.attempt(attempt);
            who = passwords
                    .check(attempt.account(), String.valueOf(asked.getCredentials()))
                    .orElse(null);
        } catch (RequestException refused) {
            recorder.refused(attempt.address(), method);
            throw new SignInRefusedException(refused);
        }
        if (who == null) {
            recorder.failed(attempt.account(), attempt.address(), method);
            throw new BadCredentialsException("User name or password is wrong.");
        }
        int earlier = throttle.succeeded(attempt);
        if (form && factors.isSetUp(who.account())) {
            throw new SecondFactorNeededException(who, earlier);
        }
        return SignedIn.authentication(who, method, earlier);
    }

    private static SignInAttempt attempt(Authentication asked) {
        String address = asked.getDetails() instanceof WebAuthenticationDetails web ? web.getRemoteAddress() : "";
        String name = new SignInAttempt(asked.getName(), address, "").account();
        String device = asked.getDetails() instanceof SignInDetails details ? details.device(name) : "";
        return new SignInAttempt(name, address, device);
    }

    @Override
    public boolean supports(Class<?> kind) {
        return UsernamePasswordAuthenticationToken.class.isAssignableFrom(kind);
    }
}
