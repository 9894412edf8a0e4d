package org.voltdocket.privacy;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The tables of holds and erasures, and which cases are due. */
@Repository
class ErasureRepository {

    private static final String HELD = " exists (select from legal_hold h where h.case_id = c.id and not exists"
            + " (select from legal_hold_release r where r.hold = h.ordinal))";

    /** A claim that has not ended keeps its case. */
    private static final String IN_PROGRESS = " exists (select from claim_summary k where k.case_id = c.id"
            + " and k.state not in ('settled', 'withdrawn'))";

    private final JdbcClient db;

    ErasureRepository(JdbcClient db) {
        this.db = db;
    }

    /** Cases without activity since then of which the part is not erased, oldest first. */
    List<DueCase> due(ErasurePart part, Instant before, int limit) {
        return db.sql("""
                        select c.number, a.last, %s as held from case_summary c, lateral (select greatest(c.opened_at,
                            (select max(e.received_at) from evidence_summary e where e.case_id = c.id),
                            (select max(greatest(k.opened_at, k.decided_at)) from claim_summary k where k.case_id = c.id))
                            as last) a
                        where c.opened_at < :before and a.last < :before and not %s
                          and not exists (select from erasure x where x.case_id = c.id and x.part in (:part, 'case'))
                        order by a.last, c.number limit :limit""".formatted(HELD, IN_PROGRESS))
                .param("before", Timestamp.from(before))
                .param("part", part.id())
                .param("limit", limit)
                .query((row, n) -> new DueCase(
                        row.getString("number"), part, row.getTimestamp("last").toInstant(), row.getBoolean("held")))
                .list();
    }

    boolean isHeld(UUID caseId) {
        return is(HELD, caseId);
    }

    boolean isInProgress(UUID caseId) {
        return is(IN_PROGRESS, caseId);
    }

    private boolean is(String condition, UUID caseId) {
        return db.sql("select" + condition + " from case_summary c where c.id = ?")
                .param(caseId)
                .query(Boolean.class)
                .single();
    }

    boolean isErased(UUID caseId, ErasurePart part) {
        return db.sql("select exists (select from erasure where case_id = ? and part in (?, 'case'))")
                .param(caseId)
                .param(part.id())
                .query(Boolean.class)
                .single();
    }

    void addErasure(UUID caseId, ErasurePart part, String reason, Instant at, String by, int originals) {
        db.sql("insert into erasure (case_id, part, reason, erased_at, erased_by, originals) values (?, ?, ?, ?, ?, ?)")
                .param(caseId)
                .param(part.id())
                .param(reason)
                .param(Timestamp.from(at))
                .param(by)
                .param(originals)
                .update();
    }

    void addHold(UUID caseId, String reason, Instant at, String by) {
        db.sql("insert into legal_hold (case_id, reason, placed_at, placed_by) values (?, ?, ?, ?)")
                .param(caseId)
                .param(reason)
                .param(Timestamp.from(at))
                .param(by)
                .update();
    }

    /** Releases all holds of a case; false if it has none. */
    boolean releaseHolds(UUID caseId, String reason, Instant at, String by) {
        return db.sql("insert into legal_hold_release (hold, reason, released_at, released_by)"
                                + " select ordinal, ?, ?, ? from legal_hold h where case_id = ?"
                                + " and not exists (select from legal_hold_release r where r.hold = h.ordinal)")
                        .param(reason)
                        .param(Timestamp.from(at))
                        .param(by)
                        .param(caseId)
                        .update()
                > 0;
    }

    List<Hold> holds() {
        return db.sql("select c.number, h.reason, h.placed_at, h.placed_by from legal_hold h"
                        + " join case_summary c on c.id = h.case_id"
                        + " where not exists (select from legal_hold_release r where r.hold = h.ordinal)"
                        + " order by h.ordinal desc limit 200")
                .query((row, n) -> new Hold(
                        row.getString(1), row.getString(2), row.getTimestamp(3).toInstant(), row.getString(4)))
                .list();
    }

    List<Erased> erasures() {
        return db.sql("select c.number, x.* from erasure x join case_summary c on c.id = x.case_id"
                        + " order by x.erased_at desc limit 200")
                .query(ErasureRepository::erased)
                .list();
    }

    private static Erased erased(ResultSet row, int number) throws SQLException {
        return new Erased(
                row.getString("number"),
                ErasurePart.of(row.getString("part")).orElseThrow(),
                row.getString("reason"),
                row.getTimestamp("erased_at").toInstant(),
                row.getString("erased_by"),
                row.getInt("originals"));
    }
}
