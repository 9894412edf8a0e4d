package org.voltdocket.access.signin;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Sha256;

/**
 * Slows down guessing, over all servers of one database: counts attempts for a pair of account and address, for an account and
 * for an address, before a password is hashed. Beyond the free attempts each one is followed by a wait, which doubles.
 *
 * <p>Increasing waits follow NIST SP 800-63B-4, section 3.2.2; the numbers are settings.
 */
@Service
public class SignInThrottle {

    private static final String COUNT = "insert into sign_in_throttle (kind, subject, failures, last_at, blocked_until)"
            + " values (:kind, :subject, 1, :now, null) on conflict (kind, subject) do update set"
            + " failures = case when sign_in_throttle.last_at < :forgotten then 1 else sign_in_throttle.failures + 1 end,"
            + " last_at = excluded.last_at, blocked_until = null"
            + " where sign_in_throttle.blocked_until is null or sign_in_throttle.blocked_until <= excluded.last_at"
            + " returning failures";

    private final JdbcClient db;
    private final SignInSettings settings;
    private final Clock clock;

    SignInThrottle(JdbcClient db, SignInSettings settings, Clock clock) {
        this.db = db;
        this.settings = settings;
        this.clock = clock;
    }

    /** What failures are counted for. */
    enum Kind {
        PAIR,
        ACCOUNT,
        DEVICE,
        ADDRESS,
        /** Codes of a second factor. */
        CODE
    }

    /**
     * Counts an attempt as failed until {@link #succeeded} is called.
     *
     * @throws RequestException 429 where the attempt has to wait; then nothing is counted
     */
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public void attempt(SignInAttempt attempt) {
        attempt.subjects().forEach(this::count);
    }

    /**
     * Forgets the failures of an account that signed in; of the address only this attempt.
     *
     * @return how many attempts had failed before
     */
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public int succeeded(SignInAttempt attempt) {
        Map<Kind, String> subjects = attempt.subjects();
        String address = digest(subjects.remove(Kind.ADDRESS));
        int earlier = subjects.entrySet().stream()
                .mapToInt(one -> forget(one.getKey(), one.getValue()) - 1)
                .reduce(0, Math::max);
        db.sql("delete from sign_in_throttle where kind = 'ADDRESS' and subject = ? and failures = 1")
                .param(address)
                .update();
        db.sql("update sign_in_throttle set failures = failures - 1, blocked_until = null"
                        + " where kind = 'ADDRESS' and subject = ?")
                .param(address)
                .update();
        return earlier;
    }

    /**
     * Counts a failure without a name, such as of a passkey that is not known.
     *
     * @return false where the address has to wait, so that nobody fills the trail
     */
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public boolean failedFrom(String address) {
        try {
            count(Kind.ADDRESS, ClientNetwork.ofThrottle(address));
            return true;
        } catch (RequestException refused) {
            return false;
        }
    }

    /**
     * Counts a code of a second factor.
     *
     * @throws RequestException 429 where the account has to wait
     */
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public void attemptCode(String account) {
        count(Kind.CODE, account);
    }

    /** Forgets the wrong codes of an account. */
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public void codeAccepted(String account) {
        forget(Kind.CODE, account);
    }

    @Transactional
    public void removeForgotten() {
        db.sql("delete from sign_in_throttle where last_at < ? and (blocked_until is null or blocked_until < ?)")
                .param(now().minus(settings.forgetAfter()))
                .param(now())
                .update();
    }

    private void count(Kind kind, String subject) {
        OffsetDateTime now = now();
        Optional<Integer> failures = db.sql(COUNT)
                .param("kind", kind.name())
                .param("subject", digest(subject))
                .param("now", now)
                .param("forgotten", now.minus(settings.forgetAfter()))
                .query(Integer.class)
                .optional();
        if (failures.isEmpty()) {
            throw refused(kind, subject);
        }
        Duration wait = waitAfter(failures.get(), free(kind));
        if (!wait.isZero()) {
            db.sql("update sign_in_throttle set blocked_until = ? where kind = ? and subject = ?")
                    .param(now.plus(wait))
                    .param(kind.name())
                    .param(digest(subject))
                    .update();
        }
    }

    private int forget(Kind kind, String subject) {
        return db.sql("delete from sign_in_throttle where kind = ? and subject = ? returning failures")
                .param(kind.name())
                .param(digest(subject))
                .query(Integer.class)
                .optional()
                .orElse(1);
    }

    private RequestException refused(Kind kind, String subject) {
        Instant until = db.sql("select blocked_until from sign_in_throttle where kind = ? and subject = ?")
                .param(kind.name())
                .param(digest(subject))
                .query(OffsetDateTime.class)
                .single()
                .toInstant();
        int seconds = (int) Math.max(1, Duration.between(clock.instant(), until).toSeconds() + 1);
        String what = switch (kind) {
            case ADDRESS -> "Too many failed attempts to sign in from this address.";
            case CODE -> "Too many wrong codes for this account.";
            case PAIR, DEVICE -> "Too many wrong passwords for this account from this address.";
            case ACCOUNT -> "Too many wrong passwords for this account.";
        };
        return RequestException.of(
                        429,
                        "too-many-tries",
                        what + " Wait " + seconds + " seconds, then try again with the right one.")
                .retryAfter(seconds);
    }

    private int free(Kind kind) {
        return switch (kind) {
            case PAIR, DEVICE, CODE -> settings.triesPerPair();
            case ACCOUNT -> settings.triesPerAccount();
            case ADDRESS -> settings.triesPerAddress();
        };
    }

    private Duration waitAfter(int failures, int free) {
        if (failures < free) {
            return Duration.ZERO;
        }
        Duration wait = settings.firstWait().multipliedBy(1L << Math.min(failures - free, 20));
        return wait.compareTo(settings.longestWait()) > 0 ? settings.longestWait() : wait;
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    private static String digest(String subject) {
        return Sha256.of(subject.getBytes(StandardCharsets.UTF_8)).hex();
    }
}
