package org.voltdocket.returned;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.catalogue.Product;
import org.voltdocket.kernel.BatterySerial;

/** Arrivals in PostgreSQL, with the case each belongs to. */
@Component
public class ReturnRepository {

    private final JdbcClient db;

    ReturnRepository(JdbcClient db) {
        this.db = db;
    }

    /** A stored arrival. */
    public record Row(
            UUID id,
            String number,
            BatterySerial serial,
            Optional<UUID> palletId,
            Optional<String> pallet,
            Instant arrivedAt,
            String bookedBy,
            List<ArrivalWarning> warnings,
            Optional<String> supplier,
            Optional<String> type,
            Optional<String> batch) {

        static Row of(ResultSet row, int n) throws SQLException {
            return new Row(
                    row.getObject("id", UUID.class),
                    row.getString("number"),
                    new BatterySerial(row.getString("battery_serial")),
                    Optional.ofNullable(row.getObject("pallet_id", UUID.class)),
                    Optional.ofNullable(row.getString("pallet")),
                    row.getObject("arrived_at", OffsetDateTime.class).toInstant(),
                    row.getString("booked_by"),
                    ReturnRepository.warnings(row),
                    Optional.ofNullable(row.getString("supplier")),
                    Optional.ofNullable(row.getString("type")),
                    Optional.ofNullable(row.getString("batch")));
        }
    }

    static List<ArrivalWarning> warnings(ResultSet row) throws SQLException {
        return Arrays.stream((String[]) row.getArray("warnings").getArray())
                .flatMap(id -> ArrivalWarning.of(id).stream())
                .toList();
    }

    private static final String SELECT =
            "select r.*, p.number as pallet from returned_battery r left join pallet p on p.id = r.pallet_id ";

    /** Two scans of the same battery wait for each other until the transaction ends. */
    public void lock(BatterySerial serial) {
        db.sql("select pg_advisory_xact_lock(hashtextextended('returned ' || ?, 0))")
                .param(serial.value())
                .query(rs -> {});
    }

    /** What is done to a return waits for what is being done to it. */
    public void lock(UUID id) {
        db.sql("select pg_advisory_xact_lock(hashtextextended('return ' || ?, 0))")
                .param(id.toString())
                .query(rs -> {});
    }

    public Optional<Row> find(UUID id) {
        return db.sql(SELECT + "where r.id = ?").param(id).query(Row::of).optional();
    }

    /** The latest arrival of this battery that has no outcome yet. */
    public Optional<Row> open(BatterySerial serial) {
        return db.sql(SELECT + """
                        where r.battery_serial = ? and not exists (
                            select 1 from returned_outcome o where o.return_id = r.id)
                        order by r.ordinal desc limit 1""").param(serial.value()).query(Row::of).optional();
    }

    public boolean hasCase(BatterySerial serial) {
        return db.sql("select exists (select 1 from case_summary where battery_serial = ?)")
                .param(serial.value())
                .query(Boolean.class)
                .single();
    }

    public boolean wasHere(BatterySerial serial, UUID butNot) {
        return db.sql("select exists (select 1 from returned_battery where battery_serial = ? and id <> ?"
                        + " and ordinal < coalesce((select ordinal from returned_battery where id = ?), 9e18))")
                .param(serial.value())
                .param(butNot)
                .param(butNot)
                .query(Boolean.class)
                .single();
    }

    public UUID add(
            BatterySerial serial,
            UUID palletId,
            Instant arrivedAt,
            String by,
            List<ArrivalWarning> warnings,
            Optional<Product> product) {
        UUID id = UUID.randomUUID();
        long next =
                db.sql("select nextval('returned_number')").query(Long.class).single();
        db.sql("""
                insert into returned_battery (id, number, battery_serial, pallet_id, arrived_at, booked_by, warnings,
                    supplier, type, batch)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .param(id)
                .param(String.format("R-%06d", next))
                .param(serial.value())
                .param(palletId)
                .param(arrivedAt.atOffset(ZoneOffset.UTC))
                .param(by)
                .param(warnings.stream().map(ArrivalWarning::id).toArray(String[]::new))
                .param(product.map(one -> one.supplier().name()).orElse(null))
                .param(product.map(one -> one.type().code()).orElse(null))
                .param(product.map(Product::batch).orElse(null))
                .update();
        return id;
    }

    public void choose(UUID id, UUID caseId, UUID assessment, Instant at, String by) {
        db.sql(
                        "insert into returned_case (return_id, case_id, assessment_id, chosen_at, chosen_by) values (?, ?, ?, ?, ?)")
                .param(id)
                .param(caseId)
                .param(assessment)
                .param(at.atOffset(ZoneOffset.UTC))
                .param(by)
                .update();
    }

    public Optional<UUID> chosen(UUID id) {
        return db.sql("select case_id from returned_case where return_id = ? order by ordinal desc limit 1")
                .param(id)
                .query(UUID.class)
                .optional();
    }

    public void addEvidence(UUID id, UUID evidence) {
        db.sql("insert into returned_evidence (return_id, evidence_id) values (?, ?) on conflict do nothing")
                .param(id)
                .param(evidence)
                .update();
    }

    public List<UUID> evidence(UUID id) {
        return db.sql("select evidence_id from returned_evidence where return_id = ?")
                .param(id)
                .query(UUID.class)
                .list();
    }

    public List<UUID> ofCase(UUID caseId) {
        return db.sql("""
                        select r.id from returned_battery r join lateral (
                            select case_id from returned_case c where c.return_id = r.id order by c.ordinal desc limit 1
                        ) last on true where last.case_id = ? order by r.ordinal""").param(caseId).query(UUID.class).list();
    }
}
