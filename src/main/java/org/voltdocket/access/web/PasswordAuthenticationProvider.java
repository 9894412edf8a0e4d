package org.voltdocket.access.web;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.web.authentication.WebAuthenticationDetails;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.PasswordVerifier;

/** Signs in by name and password, for the form and for HTTP Basic alike, with the brake on. */
@Component
class PasswordAuthenticationProvider implements AuthenticationProvider {

    private final PasswordVerifier signIn;
    private final LoginThrottle brake;

    PasswordAuthenticationProvider(PasswordVerifier signIn, LoginThrottle brake) {
        this.signIn = signIn;
        this.brake = brake;
    }

    @Override
    public Authentication authenticate(Authentication asked) {
        String name = asked.getName().strip().toLowerCase(Locale.ROOT);
        String address = asked.getDetails() instanceof WebAuthenticationDetails web ? web.getRemoteAddress() : "";
        Duration wait = brake.wait(name, address);
        if (!wait.isZero()) {
            throw new LoginThrottledException(wait);
        }
        AccountPrincipal who =
                signIn.check(name, String.valueOf(asked.getCredentials())).orElse(null);
        if (who == null) {
            brake.failed(name, address);
            throw new BadCredentialsException("User name or password is wrong.");
        }
        brake.succeeded(name, address);
        return authenticated(who);
    }

    @Override
    public boolean supports(Class<?> kind) {
        return UsernamePasswordAuthenticationToken.class.isAssignableFrom(kind);
    }

    static Authentication authenticated(AccountPrincipal who) {
        return UsernamePasswordAuthenticationToken.authenticated(
                who,
                null,
                List.of(new SimpleGrantedAuthority("ROLE_" + who.actor().role())));
    }
}
