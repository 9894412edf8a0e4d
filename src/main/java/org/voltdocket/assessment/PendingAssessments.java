package org.voltdocket.assessment;

import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Cases whose last change is not assessed yet. */
@Component
class PendingAssessments {

    private final JdbcClient db;

    PendingAssessments(JdbcClient db) {
        this.db = db;
    }

    /** Notes a change, in the transaction that makes it; the row stays locked until that ends. */
    void note(UUID caseId) {
        db.sql("insert into assessment_due (case_id, since) values (?, clock_timestamp())"
                        + " on conflict (case_id) do update set since = clock_timestamp()")
                .param(caseId)
                .update();
    }

    Optional<Instant> since(UUID caseId) {
        return db.sql("select since from assessment_due where case_id = ?")
                .param(caseId)
                .query((row, n) -> row.getTimestamp("since").toInstant())
                .optional();
    }

    /** Done, unless something changed since. */
    void done(UUID caseId, Instant since) {
        db.sql("delete from assessment_due where case_id = ? and since = ?")
                .param(caseId)
                .param(Timestamp.from(since))
                .update();
    }

    void failed(UUID caseId, Instant at, String reason) {
        db.sql("insert into assessment_due (case_id, since, failed_at, reason) values (?, clock_timestamp(), ?, ?)"
                        + " on conflict (case_id) do update set failed_at = excluded.failed_at,"
                        + " reason = excluded.reason")
                .param(caseId)
                .param(Timestamp.from(at))
                .param(reason)
                .update();
    }

    Optional<AssessmentFailure> failure(UUID caseId) {
        return db.sql("select failed_at, reason from assessment_due where case_id = ? and failed_at is not null")
                .param(caseId)
                .query((row, n) ->
                        new AssessmentFailure(row.getTimestamp("failed_at").toInstant(), row.getString("reason")))
                .optional();
    }

    /** Those that nobody can be at work on any more, and that did not fail: what a node that died left behind. */
    List<UUID> leftBehind() {
        return db.sql("select case_id from assessment_due where failed_at is null"
                        + " and since < clock_timestamp() - interval '2 minutes' order by since, case_id")
                .query(UUID.class)
                .list();
    }

    List<UUID> all() {
        return db.sql("select case_id from assessment_due order by since, case_id")
                .query(UUID.class)
                .list();
    }
}
