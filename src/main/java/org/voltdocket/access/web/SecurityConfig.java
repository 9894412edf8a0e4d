package org.voltdocket.access.web;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.ProviderManager;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.crypto.factory.PasswordEncoderFactories;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.authentication.AuthenticationFailureHandler;
import org.springframework.security.web.authentication.LoginUrlAuthenticationEntryPoint;
import org.springframework.security.web.authentication.www.BasicAuthenticationFilter;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.web.servlet.HandlerExceptionResolver;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.TokenService;

/**
 * Four doors: {@code /api/v1/tokens} by name and password, the rest of the API and the metrics by token, pages by session.
 *
 * <p>Refusals are handed to the exception resolver, so that they look like every other problem.
 */
@Configuration
class SecurityConfig {

    private static final String[] PUBLIC = {
        "/sign-in",
        "/licences",
        "/manual",
        "/rulebook",
        "/manual/**",
        "/error",
        "/*.css",
        "/*.svg",
        "/*.js",
        "/favicon.ico",
        "/css/**",
        "/js/**",
        "/img/**",
        "/webjars/**",
        "/v3/api-docs",
        "/v3/api-docs/**",
        "/v3/api-docs.yaml",
        "/actuator/health",
        "/actuator/health/**"
    };

    private static final String[] ADMINISTRATORS = {
        "/accounts", "/accounts/**", "/editions", "/editions/**", "/reassessments", "/reassessments/**", "/watch"
    };

    private static final String CONTENT_POLICY = "default-src 'self'; img-src 'self' data:; object-src 'none'; "
            + "base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    private final HandlerExceptionResolver resolver;

    SecurityConfig(HandlerExceptionResolver handlerExceptionResolver) {
        this.resolver = handlerExceptionResolver;
    }

    @Bean
    static PasswordEncoder passwordEncoder() {
        return PasswordEncoderFactories.createDelegatingPasswordEncoder();
    }

    @Bean
    AuthenticationManager authenticationManager(PasswordAuthenticationProvider provider) {
        return new ProviderManager(provider);
    }

    @Bean
    @Order(1)
    SecurityFilterChain tokenDoor(HttpSecurity http) throws Exception {
        stateless(http).securityMatcher("/api/v1/tokens");
        AuthenticationEntryPoint refusal = challenge("Basic realm=\"voltdocket\", charset=\"UTF-8\"");
        http.httpBasic(basic -> basic.authenticationEntryPoint(refusal));
        http.exceptionHandling(e -> e.authenticationEntryPoint(refusal).accessDeniedHandler(denied()));
        return http.build();
    }

    @Bean
    @Order(2)
    SecurityFilterChain apiDoor(HttpSecurity http, TokenService tokens) throws Exception {
        http.authorizeHttpRequests(routes -> routes.requestMatchers("/api/v1/reassessments", "/api/v1/reassessments/**")
                .hasRole("ADMIN"));
        stateless(http).securityMatcher("/api", "/api/**");
        AuthenticationEntryPoint refusal = challenge("Bearer");
        http.addFilterBefore(new BearerTokenFilter(tokens, refusal), BasicAuthenticationFilter.class);
        http.exceptionHandling(e -> e.authenticationEntryPoint(refusal).accessDeniedHandler(denied()));
        return http.build();
    }

    /** Metrics, for a collector with an administrator's token. */
    @Bean
    @Order(3)
    SecurityFilterChain metricsDoor(HttpSecurity http, TokenService tokens) throws Exception {
        http.authorizeHttpRequests(
                routes -> routes.requestMatchers("/actuator/**").hasRole("ADMIN"));
        stateless(http).securityMatcher("/actuator/prometheus", "/actuator/prometheus/**");
        AuthenticationEntryPoint refusal = challenge("Bearer");
        http.addFilterBefore(new BearerTokenFilter(tokens, refusal), BasicAuthenticationFilter.class);
        http.exceptionHandling(e -> e.authenticationEntryPoint(refusal).accessDeniedHandler(denied()));
        return http.build();
    }

    @Bean
    @Order(4)
    SecurityFilterChain pageDoor(HttpSecurity http, AccountService accounts) throws Exception {
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
        http.exceptionHandling(e -> e.authenticationEntryPoint(toSignIn()).accessDeniedHandler(denied()));
        http.addFilterBefore(new SessionValidityFilter(accounts), AuthorizationFilter.class);
        return headers(http).build();
    }

    private static HttpSecurity stateless(HttpSecurity http) throws Exception {
        http.sessionManagement(s -> s.sessionCreationPolicy(SessionCreationPolicy.STATELESS));
        http.csrf(csrf -> csrf.disable());
        http.requestCache(cache -> cache.disable());
        http.authorizeHttpRequests(routes -> routes.anyRequest().authenticated());
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

    /** People are led to the form; a page's script is told in JSON. */
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
