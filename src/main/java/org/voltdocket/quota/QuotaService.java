package org.voltdocket.quota;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.voltdocket.access.AccountChangedEvent;
import org.voltdocket.kernel.RequestException;

/** Counts what workshops use, and refuses what is beyond their quotas. All nodes count together, in the database. */
@Service
@EnableConfigurationProperties(QuotaLimits.class)
public class QuotaService {

    private final JdbcClient db;
    private final QuotaLimits limits;
    private final Clock clock;

    QuotaService(JdbcClient db, QuotaLimits limits, Clock clock) {
        this.db = db;
        this.limits = limits;
        this.clock = clock;
    }

    private record Used(long uploads, long bytes, long assessments) {}

    /**
     * Counts an upload.
     *
     * @param bytes size of the request
     * @throws RequestException 429 with the time of the reset where a quota of uploads does not allow it; nothing is counted
     */
    public void countUpload(UUID workshop, long bytes) {
        count(workshop, new Used(1, bytes, 0));
    }

    /** Counts a request for an assessment; throws as {@link #countUpload}. */
    public void countAssessment(UUID workshop) {
        count(workshop, new Used(0, 0, 1));
    }

    private void count(UUID workshop, Used more) {
        int counted = db.sql("""
                        insert into workshop_usage as u (workshop_id, day, uploads, bytes, assessments)
                        values (:workshop, :day, :uploads, :bytes, :assessments)
                        on conflict (workshop_id, day) do update set uploads = u.uploads + excluded.uploads,
                            bytes = u.bytes + excluded.bytes, assessments = u.assessments + excluded.assessments
                        where (excluded.uploads = 0 or u.uploads + excluded.uploads <= :mostUploads
                                and u.bytes + excluded.bytes <= :mostBytes)
                            and (excluded.assessments = 0 or u.assessments + excluded.assessments <= :mostAssessments)""")
                .param("workshop", workshop)
                .param("day", today())
                .param("uploads", more.uploads())
                .param("bytes", more.bytes())
                .param("assessments", more.assessments())
                .param("mostUploads", limits.uploadsPerDay())
                .param("mostBytes", limits.bytesPerDay().toBytes())
                .param("mostAssessments", limits.assessmentsPerDay())
                .update();
        if (counted == 0) {
            throw refusal(more.assessments() > 0 ? assessments(used(workshop)) : reached(used(workshop)));
        }
    }

    /** What a workshop has used today, in the order of {@link Quota}. */
    public List<QuotaUse> of(UUID workshop) {
        Used used = used(workshop);
        return List.of(uploads(used), bytes(used), assessments(used), tokens(workshop));
    }

    private Used used(UUID workshop) {
        return db.sql("select uploads, bytes, assessments from workshop_usage where workshop_id = ? and day = ?")
                .param(workshop)
                .param(today())
                .query((row, n) -> new Used(row.getLong(1), row.getLong(2), row.getLong(3)))
                .optional()
                .orElse(new Used(0, 0, 0));
    }

    private QuotaUse uploads(Used used) {
        return new QuotaUse(Quota.UPLOADS, used.uploads(), limits.uploadsPerDay(), Optional.of(reset()));
    }

    private QuotaUse bytes(Used used) {
        return new QuotaUse(Quota.BYTES, used.bytes(), limits.bytesPerDay().toBytes(), Optional.of(reset()));
    }

    private QuotaUse assessments(Used used) {
        return new QuotaUse(Quota.ASSESSMENTS, used.assessments(), limits.assessmentsPerDay(), Optional.of(reset()));
    }

    private QuotaUse tokens(UUID workshop) {
        long tokens = db.sql(
                        "select count(*) from workshop_token where workshop_id = ? and expires_at > clock_timestamp()")
                .param(workshop)
                .query(Long.class)
                .single();
        return new QuotaUse(Quota.TOKENS, tokens, limits.tokens(), Optional.empty());
    }

    private QuotaUse reached(Used used) {
        return used.uploads() >= limits.uploadsPerDay() ? uploads(used) : bytes(used);
    }

    /** Refuses a token beyond the quota in the transaction that makes it. */
    @EventListener(condition = "#made.act() == 'token-created'")
    void onToken(AccountChangedEvent made) {
        made.actor()
                .workshop()
                .map(this::tokens)
                .filter(use -> use.used() > use.limit())
                .ifPresent(use -> {
                    throw RequestException.of(
                            409,
                            "quota-reached",
                            "Your workshop has " + use.limit()
                                    + " tokens that work, which is its limit. Revoke one at /account"
                                    + " that is no longer needed, then make this one.");
                });
    }

    private RequestException refusal(QuotaUse use) {
        Instant reset = use.resetsAt().orElseThrow();
        return RequestException.of(
                        429,
                        "quota-reached",
                        "Your workshop has used " + use.used() + " of its " + use.limit() + " "
                                + use.quota().id()
                                + " of today (UTC), and this request would exceed the limit. Nothing was stored. Send it after "
                                + reset + ", or ask the distributor for a larger quota.")
                .with("quota", use.quota().id())
                .with("used", use.used())
                .with("limit", use.limit())
                .with("resetsAt", reset)
                .retryAfter((int) Duration.between(clock.instant(), reset).toSeconds() + 1);
    }

    private LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    }

    private Instant reset() {
        return today().plusDays(1).atStartOfDay(ZoneOffset.UTC).toInstant();
    }
}
