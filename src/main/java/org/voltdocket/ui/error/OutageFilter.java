package org.voltdocket.ui.error;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerExceptionResolver;

/** Answers outages and refusals that filters meet in the same way as those that controllers meet. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 20)
class OutageFilter extends OncePerRequestFilter {

    private final HandlerExceptionResolver resolver;

    OutageFilter(HandlerExceptionResolver handlerExceptionResolver) {
        this.resolver = handlerExceptionResolver;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        try {
            chain.doFilter(request, response);
        } catch (RuntimeException | ServletException e) {
            boolean known = Outage.behind(e).isPresent()
                    || ProblemExceptionHandler.refused(e).isPresent();
            if (response.isCommitted() || !known) {
                throw e;
            }
            response.resetBuffer();
            if (resolver.resolveException(request, response, null, e) == null) {
                throw e;
            }
        }
    }
}
