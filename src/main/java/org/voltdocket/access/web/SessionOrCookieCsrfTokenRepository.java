package org.voltdocket.access.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.security.web.csrf.CsrfTokenRepository;
import org.springframework.security.web.csrf.DefaultCsrfToken;
import org.springframework.security.web.csrf.HttpSessionCsrfTokenRepository;
import org.voltdocket.access.signin.ServerSecret;

/**
 * Stores the CSRF token in the session where there is one and otherwise in a signed cookie, so that anonymous requests create no
 * session. A cookie that this server did not sign is ignored.
 */
class SessionOrCookieCsrfTokenRepository implements CsrfTokenRepository {

    private static final String HEADER = "X-CSRF-TOKEN";
    private static final String PURPOSE = "csrf";

    private final HttpSessionCsrfTokenRepository session = new HttpSessionCsrfTokenRepository();
    private final CookieCsrfTokenRepository cookie = new CookieCsrfTokenRepository();
    private final ServerSecret secret;

    SessionOrCookieCsrfTokenRepository(ServerSecret secret) {
        this.secret = secret;
        session.setHeaderName(HEADER);
        cookie.setHeaderName(HEADER);
        cookie.setCookieName("voltdocket-csrf");
        cookie.setCookiePath("/");
        cookie.setCookieCustomizer(one -> one.sameSite("Lax"));
    }

    @Override
    public CsrfToken generateToken(HttpServletRequest request) {
        if (hasSession(request)) {
            return session.generateToken(request);
        }
        CsrfToken made = cookie.generateToken(request);
        String signed = made.getToken() + "." + secret.sign(PURPOSE, made.getToken());
        return new DefaultCsrfToken(made.getHeaderName(), made.getParameterName(), signed);
    }

    @Override
    public void saveToken(CsrfToken token, HttpServletRequest request, HttpServletResponse response) {
        (hasSession(request) ? session : cookie).saveToken(token, request, response);
    }

    @Override
    public CsrfToken loadToken(HttpServletRequest request) {
        if (hasSession(request)) {
            return session.loadToken(request);
        }
        CsrfToken sent = cookie.loadToken(request);
        return sent != null && isOurs(sent.getToken()) ? sent : null;
    }

    private boolean isOurs(String token) {
        int dot = token.indexOf('.');
        return dot > 0 && secret.isSigned(PURPOSE, token.substring(0, dot), token.substring(dot + 1));
    }

    private static boolean hasSession(HttpServletRequest request) {
        return request.getSession(false) != null;
    }
}
