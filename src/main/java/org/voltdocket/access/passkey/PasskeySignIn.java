package org.voltdocket.access.passkey;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.http.HttpMethod;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.authentication.HttpMessageConverterAuthenticationSuccessHandler;
import org.springframework.security.web.authentication.www.BasicAuthenticationFilter;
import org.springframework.security.web.savedrequest.RequestCache;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;
import org.springframework.security.web.webauthn.authentication.PublicKeyCredentialRequestOptionsFilter;
import org.springframework.security.web.webauthn.authentication.WebAuthnAuthenticationFilter;
import org.springframework.security.web.webauthn.authentication.WebAuthnAuthenticationRequestToken;
import org.springframework.security.web.webauthn.management.RelyingPartyAuthenticationRequest;
import org.springframework.security.web.webauthn.management.Webauthn4JRelyingPartyOperations;
import org.springframework.security.web.webauthn.registration.PublicKeyCredentialCreationOptionsFilter;
import org.springframework.security.web.webauthn.registration.WebAuthnRegistrationFilter;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.signin.SealedCookie;
import org.voltdocket.access.signin.ServerSecret;
import org.voltdocket.access.signin.SignInMethod;
import org.voltdocket.access.signin.SignInOption;
import org.voltdocket.access.signin.SignInRecorder;
import org.voltdocket.access.signin.SignInThrottle;
import org.voltdocket.access.signin.SignedIn;
import org.voltdocket.access.signin.UsedChallenges;

/** Sign-in by passkey, and their registration: the filters of Spring Security at addresses of this server. */
@Component
class PasskeySignIn implements SignInOption {

    private final Webauthn4JRelyingPartyOperations relyingParty;
    private final PasskeyRepository passkeys;
    private final AccountService accounts;
    private final SignInRecorder recorder;
    private final SignInThrottle throttle;
    private final UsedChallenges challenges;
    private final SealedCookie cookie;

    PasskeySignIn(
            Webauthn4JRelyingPartyOperations relyingParty,
            PasskeyRepository passkeys,
            AccountService accounts,
            SignInRecorder recorder,
            SignInThrottle throttle,
            UsedChallenges challenges,
            ServerSecret secret) {
        this.relyingParty = relyingParty;
        this.passkeys = passkeys;
        this.accounts = accounts;
        this.recorder = recorder;
        this.throttle = throttle;
        this.challenges = challenges;
        this.cookie = new SealedCookie(secret, "voltdocket-passkey", RequestOptionsCookie.LIFETIME);
    }

    @Override
    public void configure(HttpSecurity http) {
        String server = relyingParty.createCredentialRequestOptions(() -> null).getRpId();
        RequestOptionsCookie options = new RequestOptionsCookie(cookie, server);
        addSignIn(http, options);
        addRegistration(http);
    }

    private void addSignIn(HttpSecurity http, RequestOptionsCookie options) {
        PublicKeyCredentialRequestOptionsFilter challenge = new PublicKeyCredentialRequestOptionsFilter(relyingParty);
        challenge.setRequestMatcher(post("/sign-in/passkey/options"));
        challenge.setRequestOptionsRepository(options);
        http.addFilterBefore(challenge, AuthorizationFilter.class);

        HttpMessageConverterAuthenticationSuccessHandler answer =
                new HttpMessageConverterAuthenticationSuccessHandler();
        answer.setRequestCache(http.getSharedObject(RequestCache.class));
        WebAuthnAuthenticationFilter filter = new WebAuthnAuthenticationFilter();
        filter.setRequiresAuthenticationRequestMatcher(post("/sign-in/passkey"));
        filter.setRequestOptionsRepository(options);
        filter.setAuthenticationManager(this::authenticate);
        filter.setAuthenticationSuccessHandler(answer);
        filter.setAuthenticationFailureHandler((request, response, exception) -> {
            if (throttle.failedFrom(request.getRemoteAddr())) {
                recorder.failed("", request.getRemoteAddr(), SignInMethod.PASSKEY);
            }
            response.setStatus(401);
        });
        SignInOption.startsSession(filter, http);
        http.addFilterBefore(filter, BasicAuthenticationFilter.class);
    }

    private void addRegistration(HttpSecurity http) {
        PublicKeyCredentialCreationOptionsFilter options = new PublicKeyCredentialCreationOptionsFilter(relyingParty);
        options.setRequestMatcher(post("/account/passkeys/options"));
        WebAuthnRegistrationFilter registration = new WebAuthnRegistrationFilter(passkeys, relyingParty);
        registration.setRegisterCredentialMatcher(post("/account/passkeys"));
        registration.setRemoveCredentialMatcher(PasskeySignIn::never);
        http.addFilterAfter(options, AuthorizationFilter.class);
        http.addFilterAfter(registration, AuthorizationFilter.class);
    }

    private Authentication authenticate(Authentication asked) {
        RelyingPartyAuthenticationRequest request = ((WebAuthnAuthenticationRequestToken) asked).getWebAuthnRequest();
        String name;
        try {
            name = relyingParty.authenticate(request).getName();
        } catch (RuntimeException e) {
            throw new BadCredentialsException("This passkey is not known or its answer is wrong.", e);
        }
        String challenge = request.getRequestOptions().getChallenge().toBase64UrlString();
        if (!challenges.use(challenge, RequestOptionsCookie.LIFETIME)) {
            throw new BadCredentialsException("This challenge was answered before.");
        }
        AccountPrincipal who = accounts.principal(name)
                .orElseThrow(() -> new BadCredentialsException("The account of this passkey is disabled."));
        return SignedIn.authentication(who, SignInMethod.PASSKEY, 0);
    }

    private static RequestMatcher post(String path) {
        return PathPatternRequestMatcher.withDefaults().matcher(HttpMethod.POST, path);
    }

    /** Passkeys are removed by a form of the account page. */
    private static boolean never(HttpServletRequest request) {
        return false;
    }
}
