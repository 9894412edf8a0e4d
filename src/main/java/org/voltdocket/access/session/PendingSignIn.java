package org.voltdocket.access.session;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.signin.SealedCookie;
import org.voltdocket.access.signin.ServerSecret;

/** A sign-in whose password is right and whose second factor is missing, in a cookie, so that the server stores nothing. */
@Component
public class PendingSignIn {

    private static final Duration LIFETIME = Duration.ofMinutes(5);

    private final SealedCookie cookie;
    private final AccountService accounts;

    PendingSignIn(ServerSecret secret, AccountService accounts) {
        this.cookie = new SealedCookie(secret, "voltdocket-second", LIFETIME);
        this.accounts = accounts;
    }

    /** Who is signing in, and how many attempts failed before. */
    public record Account(AccountPrincipal who, int earlierFailures) {}

    public void write(SecondFactorNeededException needed, HttpServletRequest request, HttpServletResponse response) {
        AccountPrincipal who = needed.who();
        cookie.write(who.account() + " " + who.stamp() + " " + needed.earlierFailures(), request, response);
    }

    /** Empty where there is none, it is too old, or the account was changed since. */
    public Optional<Account> read(HttpServletRequest request) {
        return cookie.read(request).flatMap(this::parse);
    }

    void remove(HttpServletRequest request, HttpServletResponse response) {
        cookie.remove(request, response);
    }

    private Optional<Account> parse(String text) {
        String[] parts = text.split(" ");
        int stamp = Integer.parseInt(parts[1]);
        return accounts.principal(UUID.fromString(parts[0]))
                .filter(who -> who.stamp() == stamp)
                .map(who -> new Account(who, Integer.parseInt(parts[2])));
    }
}
