package org.voltdocket.access.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Comparator;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.session.SessionAuthenticationStrategy;
import org.springframework.session.FindByIndexNameSessionRepository;
import org.springframework.session.Session;

/** Ends the least recently used sessions of an account when a sign-in would exceed the limit per account. */
class SessionLimit<S extends Session> implements SessionAuthenticationStrategy {

    private final FindByIndexNameSessionRepository<S> sessions;
    private final int perAccount;

    SessionLimit(FindByIndexNameSessionRepository<S> sessions, int perAccount) {
        this.sessions = sessions;
        this.perAccount = perAccount;
    }

    @Override
    public void onAuthentication(Authentication who, HttpServletRequest request, HttpServletResponse response) {
        sessions.findByPrincipalName(who.getName()).values().stream()
                .sorted(Comparator.comparing(Session::getLastAccessedTime).reversed())
                .skip(perAccount - 1L)
                .forEach(one -> sessions.deleteById(one.getId()));
    }
}
