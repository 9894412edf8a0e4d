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
import org.voltdocket.access.TokenScope;
import org.voltdocket.access.TokenService;
import org.voltdocket.access.session.SignInRefusedException;
import org.voltdocket.access.signin.SignedIn;
import org.voltdocket.kernel.RequestException;

/** Reads {@code Authorization: Bearer}; a token that does not work, or not for this call, is refused here, none at all further on. */
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
            Optional<TokenService.Owner> owner =
                    tokens.owner(header.substring(SCHEME.length()).strip());
            if (owner.isEmpty()) {
                refusal.commence(request, response, new BadCredentialsException("This token does not work."));
                return;
            }
            TokenScope scope = owner.get().scope();
            if (!scope.allows(request.getMethod(), request.getRequestURI())) {
                refusal.commence(request, response, new SignInRefusedException(outside(scope)));
                return;
            }
            SecurityContext context = SecurityContextHolder.createEmptyContext();
            context.setAuthentication(SignedIn.authentication(owner.get().account()));
            SecurityContextHolder.setContext(context);
        }
        chain.doFilter(request, response);
    }

    private static RequestException outside(TokenScope scope) {
        return RequestException.of(
                403,
                "token-scope",
                "The scope of this token is '" + scope.id()
                        + "', which does not include this call. Nothing was changed."
                        + " Use a token whose scope does.");
    }
}
