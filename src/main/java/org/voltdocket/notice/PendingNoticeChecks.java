package org.voltdocket.notice;

import java.sql.Timestamp;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Cases to be checked for notices. */
@Component
class PendingNoticeChecks {

    private final JdbcClient db;

    PendingNoticeChecks(JdbcClient db) {
        this.db = db;
    }

    /** @param spread whether related cases are checked too */
    record Due(UUID caseId, Timestamp since, boolean spread) {}

    /** Adds a case in the transaction of its change. */
    void note(UUID caseId) {
        db.sql("insert into pending_notice_check (case_id, since, spread) values (?, clock_timestamp(), true)"
                        + " on conflict (case_id) do update set since = clock_timestamp(), spread = true")
                .param(caseId)
                .update();
    }

    /** Adds a case that is related to a case just checked. */
    void noteQuietly(UUID caseId) {
        db.sql("insert into pending_notice_check (case_id, since, spread) values (?, clock_timestamp(), false)"
                        + " on conflict do nothing")
                .param(caseId)
                .update();
    }

    /** The other cases of a notice. */
    List<UUID> others(UUID notice) {
        return db.sql("select f.id from claim_notice n join case_summary f on f.number = any (n.others) where n.id = ?")
                .param(notice)
                .query(UUID.class)
                .list();
    }

    List<Due> some() {
        return db.sql("select case_id, since, spread from pending_notice_check order by since, case_id limit 100")
                .query((row, number) -> new Due(
                        row.getObject("case_id", UUID.class), row.getTimestamp("since"), row.getBoolean("spread")))
                .list();
    }

    /** Removes a checked case, unless it changed since. */
    void done(Due due) {
        db.sql("delete from pending_notice_check where case_id = ? and since = ?")
                .params(due.caseId(), due.since())
                .update();
    }
}
