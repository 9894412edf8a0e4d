package org.voltdocket.returned.service;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.returned.BatteryCondition;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.RecordedOutcome;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.returned.bench.BenchStep;
import org.voltdocket.returned.bench.StepAction;
import org.voltdocket.returned.bench.StepRecord;

/** What is recorded for a return after its arrival: conditions, places, steps, outcomes. Append-only. */
@Component
class ReturnHistoryRepository {

    private final JdbcClient db;

    ReturnHistoryRepository(JdbcClient db) {
        this.db = db;
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }

    void addCondition(UUID id, BatteryCondition seen) {
        db.sql("""
                insert into returned_condition (return_id, cracked, leaking, swollen, frozen, terminals, note, seen_at, seen_by)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .param(id)
                .param(seen.cracked())
                .param(seen.leaking())
                .param(seen.swollen())
                .param(seen.frozen())
                .param(seen.terminals().id())
                .param(seen.note())
                .param(seen.seenAt().atOffset(ZoneOffset.UTC))
                .param(seen.seenBy())
                .update();
    }

    List<BatteryCondition> conditions(UUID id) {
        return db.sql("select * from returned_condition where return_id = ? order by ordinal")
                .param(id)
                .query((row, n) -> new BatteryCondition(
                        row.getBoolean("cracked"),
                        row.getBoolean("leaking"),
                        row.getBoolean("swollen"),
                        row.getBoolean("frozen"),
                        BatteryCondition.Terminals.of(row.getString("terminals"))
                                .orElseThrow(),
                        row.getString("note"),
                        instant(row, "seen_at"),
                        row.getString("seen_by")))
                .list();
    }

    void addPlace(UUID id, ReturnedBattery.Place place) {
        db.sql("insert into returned_place (return_id, place, put_at, put_by) values (?, ?, ?, ?)")
                .param(id)
                .param(place.name())
                .param(place.at().atOffset(ZoneOffset.UTC))
                .param(place.by())
                .update();
    }

    List<ReturnedBattery.Place> places(UUID id) {
        return db.sql("select * from returned_place where return_id = ? order by ordinal")
                .param(id)
                .query((row, n) -> new ReturnedBattery.Place(
                        row.getString("place"), instant(row, "put_at"), row.getString("put_by")))
                .list();
    }

    void addStep(UUID id, StepRecord entry) {
        db.sql("""
                insert into returned_step (return_id, step, act, happened_at, done_by, noted_at, note)
                values (?, ?, ?, ?, ?, ?, ?)""")
                .param(id)
                .param(entry.step().id())
                .param(entry.act().id())
                .param(entry.at().atOffset(ZoneOffset.UTC))
                .param(entry.by())
                .param(entry.notedAt().atOffset(ZoneOffset.UTC))
                .param(entry.note())
                .update();
    }

    List<StepRecord> steps(UUID id) {
        return db.sql("select * from returned_step where return_id = ? order by ordinal")
                .param(id)
                .query((row, n) -> new StepRecord(
                        BenchStep.of(row.getString("step")).orElseThrow(),
                        StepAction.of(row.getString("act")).orElseThrow(),
                        instant(row, "happened_at"),
                        row.getString("done_by"),
                        instant(row, "noted_at"),
                        row.getString("note")))
                .list();
    }

    void addOutcome(UUID id, RecordedOutcome outcome) {
        db.sql("""
                insert into returned_outcome (return_id, outcome, reason, assessment_id, given_at, given_by)
                values (?, ?, ?, ?, ?, ?)""")
                .param(id)
                .param(outcome.finding().id())
                .param(outcome.reason())
                .param(outcome.assessment().orElse(null))
                .param(outcome.givenAt().atOffset(ZoneOffset.UTC))
                .param(outcome.givenBy())
                .update();
    }

    List<RecordedOutcome> outcomes(UUID id) {
        return db.sql("select * from returned_outcome where return_id = ? order by ordinal")
                .param(id)
                .query((row, n) -> new RecordedOutcome(
                        BenchOutcome.of(row.getString("outcome")).orElseThrow(),
                        row.getString("reason"),
                        Optional.ofNullable(row.getObject("assessment_id", UUID.class)),
                        instant(row, "given_at"),
                        row.getString("given_by")))
                .list();
    }
}
