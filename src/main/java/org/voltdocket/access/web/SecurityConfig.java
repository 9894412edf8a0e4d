package org.voltdocket.access.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.ProviderManager;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.authentication.LoginUrlAuthenticationEntryPoint;
import org.springframework.security.web.authentication.www.BasicAuthenticationFilter;
import org.springframework.security.web.csrf.CsrfFilter;
import org.springframework.security.web.header.HeaderWriterFilter;
import org.springframework.security.web.header.writers.CrossOriginOpenerPolicyHeaderWriter.CrossOriginOpenerPolicy;
import org.springframework.security.web.header.writers.CrossOriginResourcePolicyHeaderWriter.CrossOriginResourcePolicy;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.web.servlet.HandlerExceptionResolver;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.TokenService;
import org.voltdocket.access.session.AccountFactors;
import org.voltdocket.access.session.PasswordAuthenticationProvider;
import org.voltdocket.access.session.PendingSignIn;
import org.voltdocket.access.session.SecondFactorNeededException;
import org.voltdocket.access.session.SecondFactorSignIn;
import org.voltdocket.access.session.SignInDetails;
import org.voltdocket.access.session.SignInRefusedException;
import org.voltdocket.access.session.SignInSession;
import org.voltdocket.access.signin.ServerSecret;
import org.voltdocket.access.signin.SignInOption;
import org.voltdocket.access.signin.SignInSettings;
import org.voltdocket.kernel.Role;

/**
 * Five filter chains: {@code /api/v1/tokens} with name and password, the rest of the API and the metrics with a token, health
 * without sign-in, and pages with a session.
 *
 * <p>Refusals go to the exception resolver, so that every refusal is a problem detail or an error page.
 */
@Configuration
@EnableConfigurationProperties(AccessSettings.class)
class SecurityConfig {

    private static final String[] PUBLIC = {
        "/sign-in",
        "/sign-in/**",
        "/invitation/*",
        "/licences",
        "/manual",
        "/rulebook",
        "/manual/**",
        "/shared/*",
        "/error",
        "/*.css",
        "/*.svg",
        "/*.js",
        "/manifest.json",
        "/favicon.ico",
        "/css/**",
        "/js/**",
        "/img/**",
        "/webjars/**",
        "/v3/api-docs",
        "/v3/api-docs/**",
        "/v3/api-docs.yaml"
    };

    private static final String[] ADMINISTRATORS = {
        "/accounts", "/accounts/**", "/editions", "/editions/**", "/reassessments", "/reassessments/**", "/watch"
    };

    private static final String CONTENT_POLICY =
            "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; img-src 'self' data:; object-src 'none'; "
                    + "base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    /** The camera scans serials; a passkey needs the two for credentials; nothing else of a device is used. */
    private static final String PERMISSIONS_POLICY = "camera=(self), publickey-credentials-create=(self),"
            + " publickey-credentials-get=(self), accelerometer=(), bluetooth=(), display-capture=(), geolocation=(),"
            + " gyroscope=(), hid=(), magnetometer=(), microphone=(), midi=(), payment=(), serial=(), usb=()";

    private final AccessSettings settings;
    private final RequestCapacities capacities;
    private final HandlerExceptionResolver resolver;
    private final ServerSecret secret;

    SecurityConfig(
            AccessSettings settings,
            RequestCapacities capacities,
            HandlerExceptionResolver handlerExceptionResolver,
            ServerSecret secret) {
        this.settings = settings;
        this.capacities = capacities;
        this.resolver = handlerExceptionResolver;
        this.secret = secret;
    }

    @Bean
    AuthenticationManager authenticationManager(PasswordAuthenticationProvider provider) {
        return new ProviderManager(provider);
    }

    @Bean
    @Order(1)
    SecurityFilterChain tokenFilterChain(HttpSecurity http) throws Exception {
        AuthenticationEntryPoint refusal = challenge("Basic realm=\"voltdocket\", charset=\"UTF-8\"");
        stateless(http, refusal).securityMatcher("/api/v1/tokens");
        http.httpBasic(basic -> basic.authenticationEntryPoint(refusal));
        return http.build();
    }

    @Bean
    @Order(2)
    SecurityFilterChain apiFilterChain(HttpSecurity http, TokenService tokens) throws Exception {
        http.authorizeHttpRequests(routes -> routes.requestMatchers("/api/v1/reassessments", "/api/v1/reassessments/**")
                .hasRole("ADMIN"));
        AuthenticationEntryPoint refusal = challenge("Bearer");
        stateless(http, refusal).securityMatcher("/api", "/api/**");
        http.addFilterBefore(new BearerTokenFilter(tokens, refusal), BasicAuthenticationFilter.class);
        return http.build();
    }

    /** Metrics, for a collector with an administrator's token. */
    @Bean
    @Order(3)
    SecurityFilterChain metricsFilterChain(HttpSecurity http, TokenService tokens) throws Exception {
        http.authorizeHttpRequests(
                routes -> routes.requestMatchers("/actuator/**").hasRole("ADMIN"));
        AuthenticationEntryPoint refusal = challenge("Bearer");
        stateless(http, refusal).securityMatcher("/actuator/prometheus", "/actuator/prometheus/**");
        http.addFilterBefore(new BearerTokenFilter(tokens, refusal), BasicAuthenticationFilter.class);
        return http.build();
    }

    @Bean
    @Order(4)
    SecurityFilterChain healthFilterChain(HttpSecurity http) throws Exception {
        http.authorizeHttpRequests(
                routes -> routes.requestMatchers("/actuator/health/**").permitAll());
        stateless(http, challenge(null)).securityMatcher("/actuator/health", "/actuator/health/**");
        http.addFilterBefore(new AnyFormatFilter(), HeaderWriterFilter.class);
        return http.build();
    }

    @Bean
    @Order(5)
    SecurityFilterChain pageFilterChain(
            HttpSecurity http,
            AccountService accounts,
            SignInSession signIn,
            PendingSignIn pending,
            List<SignInOption> options,
            AccountFactors factors,
            SignInSettings signInSettings,
            Clock clock)
            throws Exception {
        http.authorizeHttpRequests(routes -> routes.requestMatchers(PUBLIC)
                .permitAll()
                .requestMatchers(ADMINISTRATORS)
                .hasRole("ADMIN")
                .anyRequest()
                .authenticated());
        http.formLogin(form -> form.loginPage("/sign-in")
                .defaultSuccessUrl("/")
                .failureHandler((request, response, exception) -> failed(pending, request, response, exception))
                .authenticationDetailsSource(request -> new SignInDetails(request, signIn.knownDevice(request)))
                .permitAll());
        http.logout(out ->
                out.logoutUrl("/sign-out").logoutSuccessUrl("/sign-in?out").deleteCookies("voltdocket-session"));
        Set<Role> required = signInSettings.requireSecondFactor();
        for (SignInOption option : options) {
            option.prepare(http);
        }
        http.with(new SignInOptionsConfigurer(options), all -> {});
        AuthenticationEntryPoint form = toSignIn();
        http.exceptionHandling(e -> e.authenticationEntryPoint(form).accessDeniedHandler(denied()));
        http.csrf(csrf -> csrf.csrfTokenRepository(new SessionOrCookieCsrfTokenRepository(secret)));
        http.requestCache(cache -> cache.requestCache(new CookieRequestCache()));
        http.sessionManagement(session -> session.addSessionAuthenticationStrategy(signIn));
        http.addFilterBefore(new SessionValidityFilter(accounts, settings.sessionLifetime(), clock), CsrfFilter.class);
        http.addFilterBefore(new RequestBodyFilter(capacities, form, resolver), CsrfFilter.class);
        if (!required.isEmpty()) {
            http.addFilterAfter(new SecondFactorRequirementFilter(required, factors), CsrfFilter.class);
        }
        return headers(http).build();
    }

    private HttpSecurity stateless(HttpSecurity http, AuthenticationEntryPoint refusal) throws Exception {
        http.sessionManagement(s -> s.sessionCreationPolicy(SessionCreationPolicy.STATELESS));
        http.csrf(csrf -> csrf.disable());
        http.requestCache(cache -> cache.disable());
        http.authorizeHttpRequests(routes -> routes.anyRequest().authenticated());
        http.exceptionHandling(e -> e.authenticationEntryPoint(refusal).accessDeniedHandler(denied()));
        http.addFilterAfter(new RequestBodyFilter(capacities, refusal, resolver), BasicAuthenticationFilter.class);
        return headers(http);
    }

    private static HttpSecurity headers(HttpSecurity http) throws Exception {
        return http.headers(headers -> headers.contentSecurityPolicy(csp -> csp.policyDirectives(CONTENT_POLICY))
                .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN))
                .permissionsPolicyHeader(permissions -> permissions.policy(PERMISSIONS_POLICY))
                .crossOriginOpenerPolicy(opener -> opener.policy(CrossOriginOpenerPolicy.SAME_ORIGIN))
                .crossOriginResourcePolicy(resource -> resource.policy(CrossOriginResourcePolicy.SAME_ORIGIN)));
    }

    private AuthenticationEntryPoint challenge(String scheme) {
        return (request, response, exception) -> {
            if (scheme != null && !(exception instanceof SignInRefusedException)) {
                response.setHeader(HttpHeaders.WWW_AUTHENTICATE, scheme);
            }
            resolver.resolveException(request, response, null, exception);
        };
    }

    private AccessDeniedHandler denied() {
        return (request, response, exception) -> resolver.resolveException(request, response, null, exception);
    }

    private static void failed(
            PendingSignIn pending,
            HttpServletRequest request,
            HttpServletResponse response,
            AuthenticationException exception)
            throws IOException {
        String to = "/sign-in?error";
        if (exception instanceof SecondFactorNeededException needed) {
            pending.write(needed, request, response);
            to = SecondFactorSignIn.PATH;
        } else if (exception instanceof SignInRefusedException refused) {
            to = "/sign-in?wait=" + refused.refusal().retryAfterSeconds();
        }
        response.sendRedirect(request.getContextPath() + to);
    }

    /** Redirects a browser to the sign-in form; a script of a page gets a problem detail. */
    private AuthenticationEntryPoint toSignIn() {
        AuthenticationEntryPoint form = new LoginUrlAuthenticationEntryPoint("/sign-in");
        AuthenticationEntryPoint script = challenge(null);
        return (request, response, exception) ->
                (wantsJson(request) ? script : form).commence(request, response, exception);
    }

    private static boolean wantsJson(HttpServletRequest request) {
        String accept = request.getHeader(HttpHeaders.ACCEPT);
        boolean json = accept != null && accept.contains("json") && !accept.contains("text/html");
        return json || request.getHeader("X-Requested-With") != null;
    }
}
