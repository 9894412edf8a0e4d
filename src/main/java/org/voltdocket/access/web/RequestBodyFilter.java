package org.voltdocket.access.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.InsufficientAuthenticationException;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerExceptionResolver;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.kernel.RequestException;

/**
 * Decides before a request body is read whether it is received: only for a signed-in account (or the sign-in form), and
 * within the capacity for its kind.
 */
public final class RequestBodyFilter extends OncePerRequestFilter {

    /** Request attribute that is set once the body is refused; from then on nothing, not even an error page, reads it. */
    public static final String REFUSED = RequestBodyFilter.class.getName() + ".REFUSED";

    private final RequestCapacities capacities;
    private final AuthenticationEntryPoint signIn;
    private final HandlerExceptionResolver resolver;

    RequestBodyFilter(
            RequestCapacities capacities, AuthenticationEntryPoint signIn, HandlerExceptionResolver resolver) {
        this.capacities = capacities;
        this.signIn = signIn;
        this.resolver = resolver;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return request.getContentLengthLong() == 0
                || request.getContentLengthLong() < 0 && request.getHeader(HttpHeaders.TRANSFER_ENCODING) == null;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Authentication who = SecurityContextHolder.getContext().getAuthentication();
        boolean signedIn = who != null && who.getPrincipal() instanceof AccountPrincipal;
        if (!signedIn && !isSignIn(request.getRequestURI())) {
            signIn.commence(request, response, new InsufficientAuthenticationException("not signed in"));
            return;
        }
        RequestCapacity.Permit permit;
        try {
            permit = signedIn
                    ? capacities.of(request).acquire(who.getName())
                    : capacities.signIns().acquire(request.getRemoteAddr());
        } catch (RequestException refused) {
            request.setAttribute(REFUSED, true);
            resolver.resolveException(request, response, null, refused);
            return;
        }
        try (permit) {
            chain.doFilter(request, response);
        }
    }

    /** The form and the other ways to sign in, and the form of an invitation. */
    private static boolean isSignIn(String path) {
        return path.equals("/sign-in") || path.startsWith("/sign-in/") || path.startsWith("/invitation/");
    }
}
