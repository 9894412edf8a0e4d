package org.voltdocket.access.session;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;
import org.springframework.http.HttpMethod;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.InsufficientAuthenticationException;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.authentication.AbstractAuthenticationProcessingFilter;
import org.springframework.security.web.authentication.www.BasicAuthenticationFilter;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.factor.SecondFactorService;
import org.voltdocket.access.signin.SignInMethod;
import org.voltdocket.access.signin.SignInOption;
import org.voltdocket.access.signin.SignInRecorder;
import org.voltdocket.access.signin.SignInThrottle;
import org.voltdocket.access.signin.SignedIn;
import org.voltdocket.kernel.RequestException;

/** The step after the password: the code of the second factor. */
@Component
public class SecondFactorSignIn implements SignInOption {

    /** Address of the form for the code. */
    public static final String PATH = "/sign-in/second";

    private final PendingSignIn pending;
    private final SecondFactorService factors;
    private final SignInThrottle throttle;
    private final SignInRecorder recorder;

    SecondFactorSignIn(
            PendingSignIn pending, SecondFactorService factors, SignInThrottle throttle, SignInRecorder recorder) {
        this.pending = pending;
        this.factors = factors;
        this.throttle = throttle;
        this.recorder = recorder;
    }

    @Override
    public void configure(HttpSecurity http) {
        CodeFilter filter = new CodeFilter();
        SignInOption.startsSession(filter, http);
        filter.setAuthenticationSuccessHandler(SignInOption.toSavedPage(http));
        filter.setAuthenticationFailureHandler(this::failed);
        http.addFilterBefore(filter, BasicAuthenticationFilter.class);
    }

    /**
     * Verifies a code, within the limit of attempts.
     *
     * @throws RequestException 429 where the account has to wait
     */
    public Optional<SignInMethod> verify(AccountPrincipal who, String code) {
        throttle.attemptCode(who.actor().user());
        Optional<SignInMethod> method = factors.verify(who.account(), code);
        method.ifPresent(ok -> throttle.codeAccepted(who.actor().user()));
        return method;
    }

    private void failed(HttpServletRequest request, HttpServletResponse response, AuthenticationException exception)
            throws IOException {
        String to = PATH + "?error";
        if (exception instanceof SignInRefusedException refused) {
            to = PATH + "?wait=" + refused.refusal().retryAfterSeconds();
        } else if (exception instanceof InsufficientAuthenticationException) {
            to = "/sign-in?late";
        }
        response.sendRedirect(request.getContextPath() + to);
    }

    private final class CodeFilter extends AbstractAuthenticationProcessingFilter {

        CodeFilter() {
            super(PathPatternRequestMatcher.withDefaults().matcher(HttpMethod.POST, PATH));
        }

        @Override
        public Authentication attemptAuthentication(HttpServletRequest request, HttpServletResponse response) {
            PendingSignIn.Account account = pending.read(request)
                    .orElseThrow(() -> new InsufficientAuthenticationException("The password comes first."));
            String address = request.getRemoteAddr();
            Optional<SignInMethod> method;
            try {
                method = verify(account.who(), request.getParameter("code"));
            } catch (RequestException refused) {
                recorder.refused(address, SignInMethod.CODE);
                throw new SignInRefusedException(refused);
            }
            if (method.isEmpty()) {
                recorder.failed(account.who().actor().user(), address, SignInMethod.CODE);
                throw new BadCredentialsException("This is not the code.");
            }
            pending.remove(request, response);
            return SignedIn.authentication(account.who(), method.get(), account.earlierFailures());
        }
    }
}
