package org.voltdocket.access.signin;

import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import java.util.Optional;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseCookie;
import org.springframework.web.util.WebUtils;

/** A cookie that only this server can write and read, for steps before a session exists. */
public class SealedCookie {

    private final ServerSecret secret;
    private final String name;
    private final Duration lifetime;

    public SealedCookie(ServerSecret secret, String name, Duration lifetime) {
        this.secret = secret;
        this.name = name;
        this.lifetime = lifetime;
    }

    /** The text of the cookie; empty where there is none, or it is not ours or has expired. */
    public Optional<String> read(HttpServletRequest request) {
        return Optional.ofNullable(WebUtils.getCookie(request, name))
                .map(Cookie::getValue)
                .flatMap(value -> secret.open(name, value));
    }

    public void write(String text, HttpServletRequest request, HttpServletResponse response) {
        set(secret.seal(name, text, lifetime), lifetime, request, response);
    }

    public void remove(HttpServletRequest request, HttpServletResponse response) {
        if (WebUtils.getCookie(request, name) != null) {
            set("", Duration.ZERO, request, response);
        }
    }

    private void set(String value, Duration maxAge, HttpServletRequest request, HttpServletResponse response) {
        ResponseCookie cookie = ResponseCookie.from(name, value)
                .path("/")
                .maxAge(maxAge)
                .httpOnly(true)
                .secure(request.isSecure())
                .sameSite("Lax")
                .build();
        response.addHeader(HttpHeaders.SET_COOKIE, cookie.toString());
    }
}
