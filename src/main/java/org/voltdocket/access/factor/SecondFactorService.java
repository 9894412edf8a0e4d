package org.voltdocket.access.factor;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.access.AccountChangedEvent;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.signin.ServerSecret;
import org.voltdocket.access.signin.SignInMethod;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** Sets up, verifies and removes the second factor of an account. */
@Service
public class SecondFactorService {

    /** Bytes of a key: RFC 4226, section 4, recommends 160 bits. */
    private static final int KEY_BYTES = 20;

    /** Steps before and after the present one whose codes are accepted: RFC 6238, section 5.2, suggests one. */
    private static final int DRIFT = 1;

    private static final Duration SETUP_TIME = Duration.ofMinutes(15);
    private static final String NAME = "Voltdocket";
    private static final SecureRandom RANDOM = new SecureRandom();

    private final SecondFactorRepository factors;
    private final RecoveryCodes recovery;
    private final ServerSecret secret;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    SecondFactorService(
            SecondFactorRepository factors,
            RecoveryCodes recovery,
            ServerSecret secret,
            ApplicationEventPublisher events,
            Clock clock) {
        this.factors = factors;
        this.recovery = recovery;
        this.secret = secret;
        this.events = events;
        this.clock = clock;
    }

    /** Whether the account has a second factor. */
    @Transactional(readOnly = true)
    public boolean isSetUp(UUID account) {
        return factors.existsById(account);
    }

    /** The accounts that have a second factor. */
    @Transactional(readOnly = true)
    public Set<UUID> accounts() {
        return factors.findAll().stream().map(SecondFactorEntity::accountId).collect(Collectors.toSet());
    }

    /** Since when the account has a second factor; empty where it has none. */
    @Transactional(readOnly = true)
    public Optional<Instant> setUpAt(UUID account) {
        return factors.findById(account).map(SecondFactorEntity::createdAt);
    }

    /** How many recovery codes are left. */
    @Transactional(readOnly = true)
    public int recoveryCodesLeft(UUID account) {
        return recovery.left(account);
    }

    /** A new key for the authenticator app. Nothing is stored until {@link #setUp}. */
    public SecondFactorSetup begin(AccountPrincipal who) {
        byte[] key = new byte[KEY_BYTES];
        RANDOM.nextBytes(key);
        return setup(who, Base32.encode(key));
    }

    /** The same key once more, after a wrong code; a new one where the form was open too long. */
    public SecondFactorSetup again(AccountPrincipal who, String sealed) {
        return opened(who, sealed).map(key -> setup(who, key)).orElseGet(() -> begin(who));
    }

    /**
     * Stores the key once a code of it is right, and makes recovery codes, which are returned this once.
     *
     * @param sealed of {@link #begin}
     * @throws RequestException where the form was open too long, the code is wrong, or the account has a second factor
     */
    @Transactional
    public List<String> setUp(AccountPrincipal who, String sealed, String code) {
        String key = opened(who, sealed)
                .orElseThrow(
                        () -> invalid("The form was open too long. Scan the new code and type what the app shows."));
        if (factors.existsById(who.account())) {
            throw invalid("This account has a second factor already. Remove it first.");
        }
        long step = matching(key, code, Long.MIN_VALUE)
                .orElseThrow(
                        () -> invalid("This is not the code of the app. Check that the clock of the phone is right,"
                                + " and type the six digits that the app shows now."));
        factors.saveAndFlush(
                new SecondFactorEntity(who.account(), secret.seal(purpose(who.account()), key), clock.instant(), step));
        List<String> codes = recovery.replace(who.account());
        events.publishEvent(new AccountChangedEvent(
                who.actor(), "second-factor-set-up", who.actor().user(), Map.of()));
        return codes;
    }

    /** Makes new recovery codes; the old ones work no longer. */
    @Transactional
    public List<String> newRecoveryCodes(AccountPrincipal who) {
        if (!factors.existsById(who.account())) {
            throw invalid("This account has no second factor. Set one up first.");
        }
        List<String> codes = recovery.replace(who.account());
        events.publishEvent(new AccountChangedEvent(
                who.actor(), "recovery-codes-made", who.actor().user(), Map.of()));
        return codes;
    }

    /**
     * Verifies a code. A code that was accepted is not accepted again.
     *
     * @param code six digits of the app, or a recovery code
     * @return how it was verified; empty where it is wrong
     */
    @Transactional
    public Optional<SignInMethod> verify(UUID account, String code) {
        Optional<SecondFactorEntity> row = factors.findByAccountId(account);
        if (row.isEmpty() || code == null || code.length() > 40) {
            return Optional.empty();
        }
        String key = secret.open(purpose(account), row.get().secret()).orElse("");
        Optional<Long> step = matching(key, code, row.get().lastStep());
        if (step.isPresent()) {
            row.get().accept(step.get());
            return Optional.of(SignInMethod.CODE);
        }
        return recovery.use(account, code) ? Optional.of(SignInMethod.RECOVERY_CODE) : Optional.empty();
    }

    /** Removes the second factor of an account, its own or, by an administrator, another's. */
    @Transactional
    public void remove(Actor actor, UUID account, String name) {
        if (factors.existsById(account)) {
            factors.deleteById(account);
            recovery.remove(account);
            events.publishEvent(new AccountChangedEvent(actor, "second-factor-removed", name, Map.of()));
        }
    }

    private SecondFactorSetup setup(AccountPrincipal who, String key) {
        String account = who.actor().user();
        String uri = "otpauth://totp/" + NAME + ":" + URLEncoder.encode(account, StandardCharsets.UTF_8) + "?secret="
                + key + "&issuer=" + NAME;
        String sealed = secret.seal("setup " + who.account(), key, SETUP_TIME);
        return new SecondFactorSetup(sealed, key.replaceAll("(.{4})(?!$)", "$1 "), QrImage.dataUri(uri));
    }

    private Optional<String> opened(AccountPrincipal who, String sealed) {
        return secret.open("setup " + who.account(), sealed == null ? "" : sealed);
    }

    /** The step, later than {@code after}, whose code it is. */
    private Optional<Long> matching(String key, String code, long after) {
        String digits = code == null ? "" : code.replaceAll("\\s", "");
        long now = Totp.step(clock.instant());
        if (key.isEmpty() || !digits.matches("\\d{" + Totp.DIGITS + "}")) {
            return Optional.empty();
        }
        byte[] bytes = Base32.decode(key);
        for (long step = now - DRIFT; step <= now + DRIFT; step++) {
            if (step > after && Totp.code(bytes, step).equals(digits)) {
                return Optional.of(step);
            }
        }
        return Optional.empty();
    }

    private static String purpose(UUID account) {
        return "second-factor " + account;
    }

    private static RequestException invalid(String message) {
        return RequestException.invalid("account-refused", "code", message);
    }
}
