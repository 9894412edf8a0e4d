package org.voltdocket.quota.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.HttpMethod;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.util.matcher.OrRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;
import org.springframework.stereotype.Component;
import org.springframework.util.unit.DataSize;
import org.springframework.web.filter.OncePerRequestFilter;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.web.RequestBodyFilter;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.quota.QuotaService;

/**
 * Counts uploads and assessments of workshops after sign-in and before a controller works on them. An upload whose length is
 * not announced counts as the largest one.
 */
@Component
class QuotaFilter extends OncePerRequestFilter {

    private static final RequestMatcher ASSESSES = new OrRequestMatcher(List.of(
            route(HttpMethod.POST, "/cases/new"),
            route(HttpMethod.POST, "/cases/{number}/facts"),
            route(HttpMethod.POST, "/cases/{number}/judge"),
            route(HttpMethod.GET, "/cases/{number}/compare"),
            route(HttpMethod.POST, "/api/v1/cases"),
            route(HttpMethod.PATCH, "/api/v1/cases/{number}")));

    private final QuotaService quotas;
    private final long largestUpload;

    QuotaFilter(QuotaService quotas, @Value("${spring.servlet.multipart.max-request-size}") DataSize largestUpload) {
        this.quotas = quotas;
        this.largestUpload = largestUpload.toBytes();
    }

    private static RequestMatcher route(HttpMethod method, String path) {
        return PathPatternRequestMatcher.withDefaults().matcher(method, path);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Optional<UUID> workshop = workshop();
        if (workshop.isPresent()) {
            count(workshop.get(), request);
        }
        chain.doFilter(request, response);
    }

    private void count(UUID workshop, HttpServletRequest request) {
        String type = request.getContentType();
        if (type != null && type.toLowerCase(Locale.ROOT).startsWith("multipart/")) {
            long announced = request.getContentLengthLong();
            try {
                quotas.countUpload(workshop, announced < 0 ? largestUpload : announced);
            } catch (RequestException refused) {
                request.setAttribute(RequestBodyFilter.REFUSED, true);
                throw refused;
            }
        } else if (ASSESSES.matches(request)) {
            quotas.countAssessment(workshop);
        }
    }

    /** The workshop of the account that is signed in. */
    static Optional<UUID> workshop() {
        Authentication who = SecurityContextHolder.getContext().getAuthentication();
        return who != null && who.getPrincipal() instanceof AccountPrincipal account
                ? account.actor().workshop()
                : Optional.empty();
    }
}
