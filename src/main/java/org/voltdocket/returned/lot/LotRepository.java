package org.voltdocket.returned.lot;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.sampling.InspectionLevel;
import org.voltdocket.returned.sampling.InspectionSeverity;
import org.voltdocket.returned.sampling.SamplingPlan;

/** Lots and their draws in PostgreSQL; appended, never changed. */
@Component
class LotRepository {

    private static final String SELECT = """
            select l.*, array(select coalesce((select o.outcome from returned_outcome o where o.return_id = k.return_id
                order by o.ordinal desc limit 1), '') from sampling_rank k where k.lot_id = l.id order by k.rank) as outcomes
            from sampling_lot l
            """;

    /** Batteries without an outcome and without a lot, with their workshop and batch. */
    static final String WAITING = """
            select r.id, r.number, w.id::text as workshop_key, w.name as workshop_name,
                   coalesce(r.type || ' ' || r.batch, to_char(f.produced_on, 'IYYY-"W"IW')) as batch_key
            from returned_battery r
            join lateral (select case_id from returned_case c where c.return_id = r.id order by c.ordinal desc limit 1) c
                on true
            join case_summary f on f.id = c.case_id
            left join workshop_summary w on w.id = f.opened_workshop
            where not exists (select 1 from returned_outcome o where o.return_id = r.id)
              and not exists (select 1 from sampling_rank k where k.return_id = r.id)
            """;

    private final JdbcClient db;

    LotRepository(JdbcClient db) {
        this.db = db;
    }

    /** One draw at a time: none of the batteries goes into two lots. */
    void lock() {
        db.sql("select pg_advisory_xact_lock(hashtextextended('sampling lots', 0))")
                .query(rs -> {});
    }

    /** A source with how many of it wait. */
    record Waiting(Lot.Scope scope, String key, String name, int count) {}

    List<Waiting> waiting() {
        return db.sql("with waiting as (" + WAITING + """
                        ) select * from (
                            select 'workshop' as scope, workshop_key as key, workshop_name as name, count(*) as n
                            from waiting where workshop_key is not null group by 2, 3
                            union all
                            select 'batch', batch_key, batch_key, count(*) from waiting where batch_key is not null
                            group by 2) s order by n desc, scope desc, name""")
                .query((row, i) -> new Waiting(
                        Lot.Scope.of(row.getString("scope")),
                        row.getString("key"),
                        row.getString("name"),
                        row.getInt("n")))
                .list();
    }

    /** Numbers and ids of those that wait of one source. */
    Map<String, UUID> waiting(Lot.Scope scope, String key) {
        Map<String, UUID> found = new LinkedHashMap<>();
        db.sql("select number, id from (" + WAITING + ") w where "
                        + (scope == Lot.Scope.WORKSHOP ? "workshop_key" : "batch_key") + " = ? order by number")
                .param(key)
                .query(row -> {
                    found.put(row.getString("number"), row.getObject("id", UUID.class));
                });
        return found;
    }

    Optional<String> workshopName(String key) {
        return db.sql("select name from workshop_summary where id::text = ?")
                .param(key)
                .query(String.class)
                .optional();
    }

    UUID add(
            Lot.Request wish,
            String name,
            SamplingPlan plan,
            InspectionSeverity severity,
            long seed,
            List<UUID> order,
            Instant at,
            String by) {
        UUID id = UUID.randomUUID();
        long next = db.sql("select nextval('sampling_lot_number')")
                .query(Long.class)
                .single();
        db.sql("""
                insert into sampling_lot (id, number, scope, scope_key, scope_name, size, level, aql, severity, code_letter,
                    sample_size, acceptance, seed, drawn_at, drawn_by)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .param(id)
                .param(String.format("L-%04d", next))
                .param(wish.scope().id())
                .param(wish.key())
                .param(name)
                .param(order.size())
                .param(wish.level().name())
                .param(wish.aql())
                .param(severity.id())
                .param(String.valueOf(plan.letter()))
                .param(plan.sampleSize())
                .param(plan.acceptance())
                .param(seed)
                .param(at.atOffset(ZoneOffset.UTC))
                .param(by)
                .update();
        db.sql("insert into sampling_rank (lot_id, rank, return_id)"
                        + " select ?, n, one from unnest(?) with ordinality as t (one, n)")
                .param(id)
                .param(order.toArray(UUID[]::new))
                .update();
        return id;
    }

    List<Lot> all() {
        return db.sql(SELECT + "order by l.ordinal desc limit 500")
                .query(LotRepository::lot)
                .list();
    }

    /** Lots of one source, oldest first. */
    List<Lot> of(Lot.Scope scope, String key) {
        return db.sql(SELECT + "where l.scope = ? and l.scope_key = ? order by l.ordinal")
                .param(scope.id())
                .param(key)
                .query(LotRepository::lot)
                .list();
    }

    Optional<Lot> find(UUID id) {
        return db.sql(SELECT + "where l.id = ?")
                .param(id)
                .query(LotRepository::lot)
                .optional();
    }

    private static Lot lot(ResultSet row, int n) throws SQLException {
        Lot.Scope scope = Lot.Scope.of(row.getString("scope"));
        SamplingPlan plan = new SamplingPlan(
                row.getString("code_letter").charAt(0), row.getInt("sample_size"), row.getInt("acceptance"));
        List<Optional<BenchOutcome>> outcomes = Arrays.stream(
                        (String[]) row.getArray("outcomes").getArray())
                .map(BenchOutcome::of)
                .toList();
        return new Lot(
                row.getObject("id", UUID.class),
                row.getString("number"),
                scope,
                row.getString("scope_key"),
                row.getString("scope_name"),
                row.getInt("size"),
                InspectionLevel.valueOf(row.getString("level")),
                row.getBigDecimal("aql").doubleValue(),
                InspectionSeverity.of(row.getString("severity")),
                plan,
                row.getLong("seed"),
                row.getObject("drawn_at", OffsetDateTime.class).toInstant(),
                row.getString("drawn_by"),
                LotSample.progress(scope, plan, outcomes));
    }
}
