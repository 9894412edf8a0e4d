package org.voltdocket.access.openid;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.Locale;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.security.config.ObjectPostProcessor;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.oauth2.client.oidc.userinfo.OidcUserRequest;
import org.springframework.security.oauth2.client.oidc.userinfo.OidcUserService;
import org.springframework.security.oauth2.client.registration.ClientRegistration;
import org.springframework.security.oauth2.client.registration.ClientRegistrationRepository;
import org.springframework.security.oauth2.client.registration.ClientRegistrations;
import org.springframework.security.oauth2.client.web.OAuth2LoginAuthenticationFilter;
import org.springframework.security.oauth2.core.OAuth2AuthenticationException;
import org.springframework.security.oauth2.core.oidc.user.OidcUser;
import org.springframework.security.web.authentication.session.SessionAuthenticationStrategy;
import org.springframework.security.web.context.HttpSessionSecurityContextRepository;
import org.springframework.stereotype.Component;
import org.springframework.util.function.SingletonSupplier;
import org.voltdocket.access.ProvidedAccountService;
import org.voltdocket.access.signin.SealedCookie;
import org.voltdocket.access.signin.ServerSecret;
import org.voltdocket.access.signin.SignInMethod;
import org.voltdocket.access.signin.SignInOption;
import org.voltdocket.access.signin.SignInRecorder;
import org.voltdocket.access.signin.SignInThrottle;
import org.voltdocket.access.signin.SignedIn;
import org.voltdocket.kernel.RequestException;

/** Sign-in by an OpenID Connect provider: authorization code with PKCE, by Spring Security. */
@Component
class OpenIdSignIn implements SignInOption {

    static final String REGISTRATION = "provider";

    private static final Logger LOG = LoggerFactory.getLogger(OpenIdSignIn.class);
    private static final Duration TIME_AT_PROVIDER = Duration.ofMinutes(10);

    private final OpenIdSettings settings;
    private final ProvidedAccountService accounts;
    private final SignInRecorder recorder;
    private final SignInThrottle throttle;
    private final ServerSecret secret;
    private final String address;
    private final ClientRegistrationRepository registrations;

    OpenIdSignIn(
            OpenIdSettings settings,
            ProvidedAccountService accounts,
            SignInRecorder recorder,
            SignInThrottle throttle,
            ServerSecret secret,
            @Value("${voltdocket.address:http://localhost:${server.port:8080}}") String address) {
        this.settings = settings;
        this.accounts = accounts;
        this.recorder = recorder;
        this.throttle = throttle;
        this.secret = secret;
        this.address = address.replaceAll("/+$", "");
        Supplier<ClientRegistration> known = SingletonSupplier.of(this::registration);
        // the provider is asked for its addresses at the first sign-in, so that this server starts without it
        this.registrations = id -> REGISTRATION.equals(id) ? known.get() : null;
    }

    @Override
    public void prepare(HttpSecurity http) throws Exception {
        if (!settings.isOn()) {
            return;
        }
        SealedCookie cookie = new SealedCookie(secret, "voltdocket-openid", TIME_AT_PROVIDER);
        http.oauth2Login(login -> login.loginPage("/sign-in")
                .clientRegistrationRepository(registrations)
                .authorizedClientRepository(new NoAuthorizedClients())
                .authorizationEndpoint(to -> to.baseUri("/sign-in/openid")
                        .authorizationRequestRepository(new AuthorizationRequestCookie(cookie, registrations)))
                .redirectionEndpoint(back -> back.baseUri("/sign-in/openid/answer/*"))
                .userInfoEndpoint(user -> user.oidcUserService(this::account))
                .successHandler((request, response, who) -> succeeded(http, request, response, who))
                .failureHandler(this::failed)
                .addObjectPostProcessor(sessionOfAccount(http)));
    }

    private ClientRegistration registration() {
        return ClientRegistrations.fromIssuerLocation(settings.issuer())
                .registrationId(REGISTRATION)
                .clientId(settings.clientId())
                .clientSecret(settings.clientSecret())
                .scope(settings.scopes())
                .redirectUri(address + "/sign-in/openid/answer/" + REGISTRATION)
                .build();
    }

    private OidcUser account(OidcUserRequest request) {
        OidcUser user = new OidcUserService().loadUser(request);
        try {
            return new OpenIdUser(user, accounts.signIn(OpenIdClaims.read(settings, user.getClaims())));
        } catch (RequestException refused) {
            throw new OAuth2AuthenticationException(
                    OpenIdClaims.refused("account-" + refused.field()).getError(), refused.getMessage(), refused);
        }
    }

    /** Applies what happens at every sign-in to the account instead of the person at the provider. */
    private static ObjectPostProcessor<OAuth2LoginAuthenticationFilter> sessionOfAccount(HttpSecurity http) {
        return new ObjectPostProcessor<>() {
            @Override
            public <F extends OAuth2LoginAuthenticationFilter> F postProcess(F filter) {
                SessionAuthenticationStrategy all = http.getSharedObject(SessionAuthenticationStrategy.class);
                filter.setSessionAuthenticationStrategy(
                        (who, request, response) -> all.onAuthentication(authentication(who), request, response));
                return filter;
            }
        };
    }

    private static Authentication authentication(Authentication who) {
        OpenIdUser user = (OpenIdUser) who.getPrincipal();
        return SignedIn.authentication(user.account(), SignInMethod.OPENID, 0);
    }

    private static void succeeded(
            HttpSecurity http, HttpServletRequest request, HttpServletResponse response, Authentication who)
            throws IOException, ServletException {
        Authentication account = authentication(who);
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(account);
        SecurityContextHolder.setContext(context);
        new HttpSessionSecurityContextRepository().saveContext(context, request, response);
        SignInOption.toSavedPage(http).onAuthenticationSuccess(request, response, account);
    }

    private void failed(HttpServletRequest request, HttpServletResponse response, AuthenticationException exception)
            throws IOException {
        String code = exception instanceof OAuth2AuthenticationException refused
                ? refused.getError().getErrorCode().toLowerCase(Locale.ROOT)
                : "failed";
        LOG.warn("The OpenID provider's answer was refused: {}", exception.getMessage());
        if (throttle.failedFrom(request.getRemoteAddr())) {
            recorder.failed("", request.getRemoteAddr(), SignInMethod.OPENID);
        }
        response.sendRedirect(
                request.getContextPath() + "/sign-in?openid=" + (code.matches("[a-z-]{1,40}") ? code : "failed"));
    }
}
