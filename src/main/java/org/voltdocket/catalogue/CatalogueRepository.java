package org.voltdocket.catalogue;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.voltdocket.kernel.BatterySerial;

/** Writes the tables of the catalogue in PostgreSQL: rows are added and end, nothing else. */
@Repository
class CatalogueRepository {

    /** Any number will do, as long as nothing else locks it; these are the letters "stock". */
    private static final long LOCK = 0x73746f636bL;

    private final JdbcClient db;

    CatalogueRepository(JdbcClient db) {
        this.db = db;
    }

    /** A row that stands. */
    record Standing(long id, List<Object> values) {}

    /** Waits until no other file is being taken in; released when the transaction ends. */
    void lock() {
        db.sql("select pg_advisory_xact_lock(?)").param(LOCK).query(rs -> {});
    }

    Optional<Standing> standing(CatalogueTable table, List<Object> key) {
        String where = table.columns.subList(0, table.keys).stream()
                .map(column -> column.name() + " = ?")
                .collect(Collectors.joining(" and "));
        return db.sql("select * from " + table.relation + " where ended_at is null and " + where)
                .params(key)
                .query((row, number) -> new Standing(row.getLong("id"), values(table, row)))
                .optional();
    }

    private static List<Object> values(CatalogueTable table, ResultSet row) throws SQLException {
        List<Object> values = new ArrayList<>();
        for (CatalogueTable.Column column : table.columns) {
            values.add(row.getObject(column.name(), column.cell().type()));
        }
        return values;
    }

    void end(CatalogueTable table, long id, Instant at, String by) {
        db.sql("update " + table.relation + " set ended_at = ?, ended_by = ? where id = ?")
                .params(at.atOffset(ZoneOffset.UTC), by, id)
                .update();
    }

    void add(CatalogueTable table, List<Object> values, Instant at, String by) {
        List<String> names = new ArrayList<>(
                table.columns.stream().map(CatalogueTable.Column::name).toList());
        List<Object> all = new ArrayList<>(values);
        if (table == CatalogueTable.RANGES) {
            SerialShape first = shape(values.get(2));
            names.addAll(List.of("stem", "digits", "from_number", "to_number"));
            all.addAll(List.of(
                    first.stem(),
                    first.digits(),
                    first.number(),
                    shape(values.get(3)).number()));
        }
        names.addAll(List.of("recorded_at", "recorded_by"));
        all.add(at.atOffset(ZoneOffset.UTC));
        all.add(by);
        code(table, values.get(0));
        db.sql("insert into " + table.relation + " (" + String.join(", ", names) + ") values ("
                        + names.stream().map(name -> "?").collect(Collectors.joining(", ")) + ")")
                .params(all)
                .update();
    }

    private void code(CatalogueTable table, Object code) {
        if (table == CatalogueTable.SUPPLIERS || table == CatalogueTable.TYPES) {
            String codes = table == CatalogueTable.SUPPLIERS ? "supplier" : "battery_type";
            db.sql("insert into " + codes + " (code) values (?) on conflict do nothing")
                    .param(code)
                    .update();
        }
    }

    /** Whether a row of the table stands whose column has this value. */
    boolean stands(CatalogueTable table, String column, Object value) {
        return db.sql("select exists (select from " + table.relation + " where ended_at is null and " + column
                        + " = ?)")
                .param(value)
                .query(Boolean.class)
                .single();
    }

    /** First day of production of a batch; empty where it has no range. */
    Optional<java.time.LocalDate> producedFrom(Object type, Object batch) {
        return db.sql("select produced_on from produced_range where ended_at is null and type = ? and batch = ?"
                        + " order by produced_on limit 1")
                .params(type, batch)
                .query(java.time.LocalDate.class)
                .optional();
    }

    /** A standing range that shares a serial with the one from first to last, in words. */
    Optional<String> overlap(SerialShape first, SerialShape last) {
        return db.sql("select type, batch, first_serial, last_serial from produced_range where ended_at is null"
                        + " and stem = ? and digits = ? and numrange(from_number, to_number, '[]') && numrange(?, ?, '[]')"
                        + " order by from_number limit 1")
                .params(first.stem(), first.digits(), first.number(), last.number())
                .query((row, number) -> "batch " + row.getString("batch") + " of " + row.getString("type") + ", "
                        + row.getString("first_serial") + " to " + row.getString("last_serial"))
                .optional();
    }

    static SerialShape shape(Object serial) {
        return SerialShape.of(new BatterySerial((String) serial));
    }
}
