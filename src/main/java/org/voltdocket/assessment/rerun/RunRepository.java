package org.voltdocket.assessment.rerun;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Sha256;

/** Runs in PostgreSQL. Moments are the database's, so that nodes agree and a clock set back does no harm. */
@Component
class RunRepository {

    private static final String SELECT = "select r.*, e.name from reassessment r join edition e using (sha256) ";

    private final JdbcClient db;

    RunRepository(JdbcClient db) {
        this.db = db;
    }

    UUID ask(RunMode mode, Sha256 sha256, String by) {
        UUID id = UUID.randomUUID();
        db.sql(
                        "insert into reassessment (id, mode, sha256, requested_at, requested_by) values (?, ?, ?, clock_timestamp(), ?)")
                .param(id)
                .param(mode.id())
                .param(sha256.hex())
                .param(by)
                .update();
        return id;
    }

    Optional<ReassessmentRun> find(UUID id) {
        return db.sql(SELECT + "where r.id = ?")
                .param(id)
                .query(RunRepository::run)
                .optional();
    }

    /** The same, locked until the transaction ends. */
    Optional<ReassessmentRun> lock(UUID id) {
        return db.sql(SELECT + "where r.id = ? for update of r")
                .param(id)
                .query(RunRepository::run)
                .optional();
    }

    /** Newest first. */
    List<ReassessmentRun> latest(int most) {
        return db.sql(SELECT + "order by r.ordinal desc limit ?")
                .param(most)
                .query(RunRepository::run)
                .list();
    }

    /** Those that have work to do. */
    List<UUID> atWork() {
        return db.sql("select id from reassessment where state in ('queued', 'running') order by ordinal")
                .query(UUID.class)
                .list();
    }

    /** Moves a run on; one that has ended gets the moment of its end. */
    void move(UUID id, RunState to) {
        db.sql("update reassessment set state = ?, ended_at = case when ? then clock_timestamp() end where id = ?")
                .param(to.id())
                .param(!to.open())
                .param(id)
                .update();
    }

    /** Cuts the cases that are there now into chunks, in one statement over one snapshot. */
    void cut(UUID id) {
        db.sql("""
                insert into reassessment_chunk (reassessment_id, seq, case_ids)
                select ?, seq, array_agg(id order by opened_at, id) from (
                    select id, opened_at, (row_number() over (order by opened_at, id) - 1)
                        / greatest(1, least(50, count(*) over () / 200)) as seq
                    from case_summary) as numbered
                group by seq""").param(id).update();
        db.sql("""
                update reassessment set started_at = clock_timestamp(), cases_total = (
                    select coalesce(sum(cardinality(case_ids)), 0) from reassessment_chunk where reassessment_id = ?)
                where id = ?""").param(id).param(id).update();
    }

    void fail(UUID id, String reason) {
        db.sql("update reassessment set state = 'failed', ended_at = clock_timestamp(), reason = ?"
                        + " where id = ? and state in ('queued', 'running', 'paused')")
                .param(reason)
                .param(id)
                .update();
    }

    /** @return true for the one who ends it */
    boolean finish(UUID id) {
        return db.sql("""
                        update reassessment r set state = 'done', ended_at = clock_timestamp()
                        where id = ? and state = 'running' and not exists (
                            select 1 from reassessment_chunk c where c.reassessment_id = r.id and c.done_at is null)""").param(id).update() == 1;
    }

    private static ReassessmentRun run(ResultSet row, int number) throws SQLException {
        return new ReassessmentRun(
                row.getObject("id", UUID.class),
                RunMode.of(row.getString("mode")).orElseThrow(),
                row.getString("name"),
                new Sha256(row.getString("sha256")),
                RunState.of(row.getString("state")),
                row.getTimestamp("requested_at").toInstant(),
                row.getString("requested_by"),
                moment(row.getTimestamp("started_at")),
                moment(row.getTimestamp("ended_at")),
                row.getInt("cases_total"),
                Optional.ofNullable(row.getString("reason")));
    }

    private static Optional<Instant> moment(Timestamp at) {
        return Optional.ofNullable(at).map(Timestamp::toInstant);
    }
}
