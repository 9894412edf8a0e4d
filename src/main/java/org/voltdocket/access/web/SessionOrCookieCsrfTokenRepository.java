package org.voltdocket.access.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.security.web.csrf.CsrfTokenRepository;
import org.springframework.security.web.csrf.HttpSessionCsrfTokenRepository;

/** Stores the CSRF token in the session where there is one and otherwise in a cookie, so that anonymous requests create no session. */
class SessionOrCookieCsrfTokenRepository implements CsrfTokenRepository {

    private static final String HEADER = "X-CSRF-TOKEN";

    private final HttpSessionCsrfTokenRepository session = new HttpSessionCsrfTokenRepository();
    private final CookieCsrfTokenRepository cookie = new CookieCsrfTokenRepository();

    SessionOrCookieCsrfTokenRepository() {
        session.setHeaderName(HEADER);
        cookie.setHeaderName(HEADER);
        cookie.setCookieName("voltdocket-csrf");
        cookie.setCookieCustomizer(one -> one.sameSite("Lax"));
    }

    @Override
    public CsrfToken generateToken(HttpServletRequest request) {
        return repository(request).generateToken(request);
    }

    @Override
    public void saveToken(CsrfToken token, HttpServletRequest request, HttpServletResponse response) {
        repository(request).saveToken(token, request, response);
    }

    @Override
    public CsrfToken loadToken(HttpServletRequest request) {
        return repository(request).loadToken(request);
    }

    private CsrfTokenRepository repository(HttpServletRequest request) {
        return request.getSession(false) == null ? cookie : session;
    }
}
