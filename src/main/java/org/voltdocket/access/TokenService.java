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
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataAccessException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Sha256;

/** Keys for scripts: made for an account, shown once, stored as a digest, limited in scope and time, and revocable. */
@Service
public class TokenService {

    private static final Logger LOG = LoggerFactory.getLogger(TokenService.class);
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

    /** Makes a token of 256 random bits. */
    @Transactional
    public NewToken create(AccountPrincipal who, TokenRequest wanted) {
        byte[] secret = new byte[32];
        RANDOM.nextBytes(secret);
        String token = MARK + Base64.getUrlEncoder().withoutPadding().encodeToString(secret);
        Instant now = clock.instant();
        Instant end = now.plus(Duration.ofDays(wanted.days()));
        AccountEntity account = accounts.getReferenceById(who.account());
        tokens.saveAndFlush(new TokenEntity(account, wanted.name(), wanted.scope(), digest(token), now, end));
        events.publishEvent(new AccountChangedEvent(
                who.actor(),
                "token-created",
                who.actor().user(),
                Map.of(
                        "account.token",
                        wanted.name(),
                        "account.scope",
                        wanted.scope().id())));
        return new NewToken(token, end);
    }

    /** The account of a token, and what the token may be used for. */
    public record Owner(AccountPrincipal account, TokenScope scope) {}

    /** Whom a token belongs to; empty where it is unknown, expired or revoked, or its account disabled. Notes its use. */
    public Optional<Owner> owner(String token) {
        if (token == null || !token.startsWith(MARK)) {
            return Optional.empty();
        }
        Instant now = clock.instant();
        Optional<TokenEntity> usable = tokens.findByDigest(digest(token)).filter(row -> row.usable(now));
        usable.filter(row -> !row.usedJustBefore(now)).ifPresent(row -> noteUse(row, now));
        return usable.map(row -> new Owner(row.account().signedIn(), row.scope()));
    }

    /** A database that cannot write, such as on a full disk, still answers those who read. */
    private void noteUse(TokenEntity row, Instant now) {
        try {
            tokens.noteUse(row.id(), now);
        } catch (DataAccessException e) {
            LOG.warn(
                    "The use of token {} is not noted: {}",
                    row.id(),
                    e.getClass().getSimpleName());
        }
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
