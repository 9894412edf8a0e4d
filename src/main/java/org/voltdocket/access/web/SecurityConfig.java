package org.voltdocket.access.web;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.ProviderManager;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.authentication.AuthenticationFailureHandler;
import org.springframework.security.web.authentication.LoginUrlAuthenticationEntryPoint;
import org.springframework.security.web.authentication.session.SessionAuthenticationStrategy;
import org.springframework.security.web.authentication.www.BasicAuthenticationFilter;
import org.springframework.security.web.csrf.CsrfFilter;
import org.springframework.security.web.header.HeaderWriterFilter;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.session.FindByIndexNameSessionRepository;
import org.springframework.web.servlet.HandlerExceptionResolver;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.TokenService;

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

    private final AccessSettings settings;
    private final RequestCapacities capacities;
    private final HandlerExceptionResolver resolver;

    SecurityConfig(
            AccessSettings settings, RequestCapacities capacities, HandlerExceptionResolver handlerExceptionResolver) {
        this.settings = settings;
        this.capacities = capacities;
        this.resolver = handlerExceptionResolver;
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
            HttpSecurity http, AccountService accounts, SessionAuthenticationStrategy sessionLimit, Clock clock)
            throws Exception {
        http.authorizeHttpRequests(routes -> routes.requestMatchers(PUBLIC)
                .permitAll()
                .requestMatchers(ADMINISTRATORS)
                .hasRole("ADMIN")
                .anyRequest()
                .authenticated());
        http.formLogin(form -> form.loginPage("/sign-in")
                .defaultSuccessUrl("/")
                .failureHandler(failed())
                .permitAll());
        http.logout(out ->
                out.logoutUrl("/sign-out").logoutSuccessUrl("/sign-in?out").deleteCookies("voltdocket-session"));
        AuthenticationEntryPoint signIn = toSignIn();
        http.exceptionHandling(e -> e.authenticationEntryPoint(signIn).accessDeniedHandler(denied()));
        http.csrf(csrf -> csrf.csrfTokenRepository(new SessionOrCookieCsrfTokenRepository()));
        http.requestCache(cache -> cache.requestCache(new CookieRequestCache()));
        http.sessionManagement(session -> session.addSessionAuthenticationStrategy(sessionLimit));
        http.addFilterBefore(new SessionValidityFilter(accounts, settings.sessionLifetime(), clock), CsrfFilter.class);
        http.addFilterBefore(new RequestBodyFilter(capacities, signIn, resolver), CsrfFilter.class);
        return headers(http).build();
    }

    @Bean
    SessionAuthenticationStrategy sessionLimit(FindByIndexNameSessionRepository<?> sessions) {
        return new SessionLimit<>(sessions, settings.sessionsPerAccount());
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
                .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.SAME_ORIGIN)));
    }

    private AuthenticationEntryPoint challenge(String scheme) {
        return (request, response, exception) -> {
            if (scheme != null && !(exception instanceof LoginThrottledException)) {
                response.setHeader(HttpHeaders.WWW_AUTHENTICATE, scheme);
            }
            resolver.resolveException(request, response, null, exception);
        };
    }

    private AccessDeniedHandler denied() {
        return (request, response, exception) -> resolver.resolveException(request, response, null, exception);
    }

    private static AuthenticationFailureHandler failed() {
        return (request, response, exception) -> {
            String how = exception instanceof LoginThrottledException tries ? "wait=" + tries.seconds() : "error";
            response.sendRedirect(request.getContextPath() + "/sign-in?" + how);
        };
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
