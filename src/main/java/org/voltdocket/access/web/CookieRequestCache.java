package org.voltdocket.access.web;

import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Optional;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseCookie;
import org.springframework.security.web.savedrequest.RequestCache;
import org.springframework.security.web.savedrequest.SavedRequest;
import org.springframework.security.web.savedrequest.SimpleSavedRequest;
import org.springframework.web.util.WebUtils;

/**
 * Remembers in a cookie which page an anonymous request asked for, so that sign-in returns to it.
 *
 * <p>Only the path and query of a GET request are stored, up to 2,000 characters. A value that is not a path on this server
 * is ignored.
 */
class CookieRequestCache implements RequestCache {

    static final String COOKIE = "voltdocket-return";
    private static final int MAX_LENGTH = 2000;

    @Override
    public void saveRequest(HttpServletRequest request, HttpServletResponse response) {
        String query = request.getQueryString();
        String path = request.getRequestURI() + (query == null ? "" : "?" + query);
        if (request.getMethod().equals("GET") && isLocalPath(path)) {
            write(Base64.getUrlEncoder().encodeToString(path.getBytes(StandardCharsets.UTF_8)), -1, request, response);
        }
    }

    @Override
    public SavedRequest getRequest(HttpServletRequest request, HttpServletResponse response) {
        return Optional.ofNullable(WebUtils.getCookie(request, COOKIE))
                .map(Cookie::getValue)
                .flatMap(CookieRequestCache::decode)
                .filter(CookieRequestCache::isLocalPath)
                .map(SimpleSavedRequest::new)
                .orElse(null);
    }

    @Override
    public HttpServletRequest getMatchingRequest(HttpServletRequest request, HttpServletResponse response) {
        return null;
    }

    @Override
    public void removeRequest(HttpServletRequest request, HttpServletResponse response) {
        if (WebUtils.getCookie(request, COOKIE) != null) {
            write("", 0, request, response);
        }
    }

    /** Whether a redirect to this value stays on this server: one leading slash, printable ASCII, no backslash. */
    static boolean isLocalPath(String path) {
        return path.length() <= MAX_LENGTH && path.matches("/(?![/\\\\])[\\x21-\\x5b\\x5d-\\x7e]*");
    }

    private static Optional<String> decode(String value) {
        try {
            return Optional.of(new String(Base64.getUrlDecoder().decode(value), StandardCharsets.UTF_8));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static void write(String value, int maxAge, HttpServletRequest request, HttpServletResponse response) {
        ResponseCookie cookie = ResponseCookie.from(COOKIE, value)
                .path("/")
                .maxAge(maxAge)
                .httpOnly(true)
                .secure(request.isSecure())
                .sameSite("Lax")
                .build();
        response.addHeader(HttpHeaders.SET_COOKIE, cookie.toString());
    }
}
