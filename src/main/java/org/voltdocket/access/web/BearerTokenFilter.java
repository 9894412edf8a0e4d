package org.voltdocket.access.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;
import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.web.filter.OncePerRequestFilter;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.TokenService;

/** Reads {@code Authorization: Bearer}; a token that does not work is refused here, none at all further on. */
class BearerTokenFilter extends OncePerRequestFilter {

    private static final String SCHEME = "Bearer ";

    private final TokenService tokens;
    private final AuthenticationEntryPoint refusal;

    BearerTokenFilter(TokenService tokens, AuthenticationEntryPoint refusal) {
        this.tokens = tokens;
        this.refusal = refusal;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String header = request.getHeader(HttpHeaders.AUTHORIZATION);
        if (header != null && header.regionMatches(true, 0, SCHEME, 0, SCHEME.length())) {
            Optional<AccountPrincipal> who =
                    tokens.owner(header.substring(SCHEME.length()).strip());
            if (who.isEmpty()) {
                refusal.commence(request, response, new BadCredentialsException("This token does not work."));
                return;
            }
            SecurityContext context = SecurityContextHolder.createEmptyContext();
            context.setAuthentication(PasswordAuthenticationProvider.authenticated(who.get()));
            SecurityContextHolder.setContext(context);
        }
        chain.doFilter(request, response);
    }
}
