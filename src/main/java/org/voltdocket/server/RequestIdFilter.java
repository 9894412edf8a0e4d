package org.voltdocket.server;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.MDC;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.servlet.HandlerMapping;

/**
 * Marks every line of the log with the request and the case it belongs to, and answers the request's mark as {@code
 * X-Request-Id}; one that a proxy gave is kept. The line of a request names its route, never its path: that may hold a VIN.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class RequestIdFilter extends OncePerRequestFilter {

    static final String HEADER = "X-Request-Id";

    private static final Logger LOG = LoggerFactory.getLogger("voltdocket.requests");
    private static final Pattern GIVEN = Pattern.compile("[A-Za-z0-9._-]{1,64}");
    private static final Pattern CASE = Pattern.compile("/cases/(V-[0-9A-Z]{3}-[0-9A-Z]{3}-[0-9A-Z])(?:/|$)");

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String given = request.getHeader(HEADER);
        String mark = given != null && GIVEN.matcher(given).matches()
                ? given
                : UUID.randomUUID().toString().substring(0, 13);
        long start = System.nanoTime();
        MDC.put("request", mark);
        Matcher named = CASE.matcher(request.getRequestURI());
        if (named.find()) {
            MDC.put("case", named.group(1));
        }
        response.setHeader(HEADER, mark);
        try {
            chain.doFilter(request, response);
        } finally {
            Object route = request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE);
            LOG.info(
                    "{} {} {} {} ms",
                    request.getMethod(),
                    route == null ? "(no route)" : route,
                    response.getStatus(),
                    (System.nanoTime() - start) / 1_000_000);
            MDC.remove("request");
            MDC.remove("case");
        }
    }
}
