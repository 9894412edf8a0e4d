package org.voltdocket.casefile.pending;

import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Cases whose latest change is not assessed yet. The transaction that changes a case marks it here, so that neither a crash
 * nor a failed assessment leaves a case out; the transaction that stores the assessment removes the mark.
 */
@Component
public class PendingAssessments {

    private final JdbcClient db;

    PendingAssessments(JdbcClient db) {
        this.db = db;
    }

    /**
     * How many cases are pending.
     *
     * @param failed how many of them failed when they were last assessed
     * @param oldest when the oldest was marked; empty if there is none
     */
    public record Counts(int all, int failed, Optional<Instant> oldest) {}

    /**
     * Marks a case. Callers that mark several cases in one transaction do so in the order of their ids, because each row
     * stays locked until the transaction ends.
     *
     * @throws org.springframework.transaction.IllegalTransactionStateException without a transaction
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void mark(UUID caseId) {
        db.sql("insert into pending_assessment (case_id, since) values (?, clock_timestamp())"
                        + " on conflict (case_id) do update set since = clock_timestamp()")
                .param(caseId)
                .update();
    }

    /** When the case was last marked; empty if its latest assessment covers everything. */
    public Optional<Instant> since(UUID caseId) {
        return db.sql("select since from pending_assessment where case_id = ?")
                .param(caseId)
                .query((row, n) -> row.getTimestamp("since").toInstant())
                .optional();
    }

    /** Removes the mark, unless the case was marked again after {@code since}. */
    public void clear(UUID caseId, Instant since) {
        db.sql("delete from pending_assessment where case_id = ? and since = ?")
                .param(caseId)
                .param(Timestamp.from(since))
                .update();
    }

    /** Records that the assessment failed; the case stays pending. */
    public void fail(UUID caseId, Instant at, String reason) {
        db.sql("insert into pending_assessment (case_id, since, failed_at, reason) values (?, clock_timestamp(), ?, ?)"
                        + " on conflict (case_id) do update set failed_at = excluded.failed_at,"
                        + " reason = excluded.reason")
                .param(caseId)
                .param(Timestamp.from(at))
                .param(reason)
                .update();
    }

    /** Why the last assessment failed; empty if it did not. */
    public Optional<AssessmentFailure> failure(UUID caseId) {
        return db.sql("select failed_at, reason from pending_assessment where case_id = ? and failed_at is not null")
                .param(caseId)
                .query((row, n) ->
                        new AssessmentFailure(row.getTimestamp("failed_at").toInstant(), row.getString("reason")))
                .optional();
    }

    /** All pending cases, oldest mark first. */
    public List<UUID> all() {
        return db.sql("select case_id from pending_assessment order by since, case_id")
                .query(UUID.class)
                .list();
    }

    /** Cases that were marked at least two minutes ago and have not failed, such as those of a node that crashed. */
    public List<UUID> abandoned() {
        return db.sql("select case_id from pending_assessment where failed_at is null"
                        + " and since < clock_timestamp() - interval '2 minutes' order by since, case_id")
                .query(UUID.class)
                .list();
    }

    public Counts counts() {
        return db.sql("select count(*), count(failed_at), min(since) from pending_assessment")
                .query((row, n) -> new Counts(
                        row.getInt(1),
                        row.getInt(2),
                        Optional.ofNullable(row.getTimestamp(3)).map(Timestamp::toInstant)))
                .single();
    }
}
