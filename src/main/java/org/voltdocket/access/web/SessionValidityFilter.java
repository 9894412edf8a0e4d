package org.voltdocket.access.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.AccountService;

/** Ends a session that exceeds its lifetime, or whose account has been disabled or given another password. */
class SessionValidityFilter extends OncePerRequestFilter {

    private final AccountService accounts;
    private final Duration lifetime;
    private final Clock clock;

    SessionValidityFilter(AccountService accounts, Duration lifetime, Clock clock) {
        this.accounts = accounts;
        this.lifetime = lifetime;
        this.clock = clock;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Authentication now = SecurityContextHolder.getContext().getAuthentication();
        if (now != null && now.getPrincipal() instanceof AccountPrincipal who) {
            HttpSession session = request.getSession(false);
            if (expired(session) || !accounts.isCurrent(who)) {
                if (session != null) {
                    session.invalidate();
                }
                SecurityContextHolder.clearContext();
            }
        }
        chain.doFilter(request, response);
    }

    private boolean expired(HttpSession session) {
        return session != null
                && Instant.ofEpochMilli(session.getCreationTime())
                        .plus(lifetime)
                        .isBefore(clock.instant());
    }
}
