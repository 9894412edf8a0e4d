package org.voltdocket.access;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Sha256;

/** Keys for scripts: made for an account, shown once, kept as a digest, good for 90 days or until revoked. */
@Service
public class TokenService {

    /** How long a token works: our own choice. */
    public static final Duration LIFE = Duration.ofDays(90);

    private static final String MARK = "vd_";
    private static final SecureRandom RANDOM = new SecureRandom();

    private final TokenRepository tokens;
    private final AccountRepository accounts;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    TokenService(TokenRepository tokens, AccountRepository accounts, ApplicationEventPublisher events, Clock clock) {
        this.tokens = tokens;
        this.accounts = accounts;
        this.events = events;
        this.clock = clock;
    }

    /**
     * Makes a token of 256 random bits.
     *
     * @param name purpose of the token, 1 to 80 characters
     * @throws RequestException where the name is blank or too long
     */
    @Transactional
    public NewToken create(AccountPrincipal who, String name) {
        String trimmed = name == null ? "" : name.strip();
        if (trimmed.isEmpty() || trimmed.length() > 80) {
            throw RequestException.invalid(
                    "malformed-request", "name", "Name the token by what it is for, in 1 to 80 characters.");
        }
        byte[] secret = new byte[32];
        RANDOM.nextBytes(secret);
        String token = MARK + Base64.getUrlEncoder().withoutPadding().encodeToString(secret);
        Instant now = clock.instant();
        AccountEntity account = accounts.getReferenceById(who.account());
        tokens.saveAndFlush(new TokenEntity(UUID.randomUUID(), account, trimmed, digest(token), now, now.plus(LIFE)));
        events.publishEvent(new AccountChangedEvent(
                who.actor(), "token-created", who.actor().user(), Map.of("account.token", trimmed)));
        return new NewToken(token, now.plus(LIFE));
    }

    /** Whom a token belongs to; empty where it is unknown, expired or revoked, or its account disabled. */
    @Transactional(readOnly = true)
    public Optional<AccountPrincipal> owner(String token) {
        if (token == null || !token.startsWith(MARK)) {
            return Optional.empty();
        }
        return tokens.findByDigest(digest(token))
                .filter(row -> row.usable(clock.instant()))
                .map(row -> row.account().signedIn());
    }

    /** The tokens of an account, newest first. */
    @Transactional(readOnly = true)
    public List<TokenSummary> of(AccountPrincipal who) {
        return tokens.findByAccountIdOrderByCreatedAtDesc(who.account()).stream()
                .map(TokenEntity::ref)
                .toList();
    }

    /** Ends one of one's own tokens at once; another's, or an unknown one, answers false. */
    @Transactional
    public boolean revoke(AccountPrincipal who, UUID id) {
        boolean revoked = tokens.findByIdAndAccountId(id, who.account())
                .map(row -> row.revoke(clock.instant()))
                .orElse(false);
        if (revoked) {
            events.publishEvent(new AccountChangedEvent(
                    who.actor(), "token-revoked", who.actor().user(), Map.of("account.token", id.toString())));
        }
        return revoked;
    }

    private static String digest(String token) {
        return Sha256.of(token.getBytes(StandardCharsets.UTF_8)).hex();
    }
}
