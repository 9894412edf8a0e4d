package org.voltdocket.catalogue;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.kernel.BatterySerial;

/** Reads what stands in the catalogue. */
@Component
class CatalogueQueries {

    private static final String TYPE = "select * from battery_type_entry where ended_at is null ";

    private final JdbcClient db;

    CatalogueQueries(JdbcClient db) {
        this.db = db;
    }

    Optional<ProducedRange> range(BatterySerial serial) {
        SerialShape shape = SerialShape.of(serial);
        return db.sql("select * from produced_range where ended_at is null and stem = ? and digits = ?"
                        + " and numrange(from_number, to_number, '[]') @> cast(? as numeric)")
                .params(shape.stem(), shape.digits(), shape.number())
                .query(CatalogueQueries::range)
                .optional();
    }

    Map<BatterySerial, ProducedRange> ranges(Collection<BatterySerial> serials) {
        Map<BatterySerial, ProducedRange> found = new HashMap<>();
        if (!serials.isEmpty()) {
            List<Object[]> rows = serials.stream()
                    .distinct()
                    .map(serial -> {
                        SerialShape shape = SerialShape.of(serial);
                        return new Object[] {serial.value(), shape.stem(), shape.digits(), shape.number()};
                    })
                    .toList();
            db.sql("select s.serial, r.* from (values :serials) s (serial, stem, digits, number)"
                            + " join produced_range r on r.ended_at is null and r.stem = s.stem and r.digits = s.digits"
                            + " and numrange(r.from_number, r.to_number, '[]') @> cast(s.number as numeric)")
                    .param("serials", rows)
                    .query(row -> {
                        found.put(new BatterySerial(row.getString("serial")), range(row, 0));
                    });
        }
        return found;
    }

    List<ProducedRange> ranges(String type) {
        return db.sql("select * from produced_range where type = ? order by batch, first_serial, id")
                .param(type)
                .query(CatalogueQueries::range)
                .list();
    }

    Optional<BatteryType> type(String code) {
        return db.sql(TYPE + "and type = ?")
                .param(code)
                .query(CatalogueQueries::type)
                .optional();
    }

    List<BatteryType> types() {
        return db.sql(TYPE + "order by type").query(CatalogueQueries::type).list();
    }

    /** The type of the longest prefix that the serial begins with. */
    Optional<BatteryType> numberedLike(BatterySerial serial) {
        return db.sql(TYPE + "and starts_with(?, serial_prefix) order by length(serial_prefix) desc, type limit 1")
                .param(serial.value())
                .query(CatalogueQueries::type)
                .optional();
    }

    Optional<Supplier> supplier(String code) {
        return suppliers().stream().filter(one -> one.code().equals(code)).findFirst();
    }

    List<Supplier> suppliers() {
        return db.sql("select supplier, name from supplier_entry where ended_at is null order by supplier")
                .query((row, number) -> new Supplier(row.getString("supplier"), row.getString("name")))
                .list();
    }

    List<SoldMonth> sales(String type) {
        return db.sql("select * from sold_month where ended_at is null and type = ? order by batch, month")
                .param(type)
                .query((row, number) -> new SoldMonth(
                        row.getString("type"),
                        row.getString("batch"),
                        YearMonth.from(row.getObject("month", LocalDate.class)),
                        row.getInt("sold")))
                .list();
    }

    private static BatteryType type(ResultSet row, int number) throws SQLException {
        String standard = row.getString("cranking_standard");
        return new BatteryType(
                row.getString("type"),
                row.getString("name"),
                row.getString("supplier"),
                Chemistry.of(row.getString("chemistry")),
                row.getDouble("capacity_ah"),
                row.getObject("rated_cranking_a", Double.class),
                standard == null ? null : CrankingStandard.of(standard),
                row.getString("serial_prefix"));
    }

    private static ProducedRange range(ResultSet row, int number) throws SQLException {
        return new ProducedRange(
                row.getString("type"),
                row.getString("batch"),
                new BatterySerial(row.getString("first_serial")),
                new BatterySerial(row.getString("last_serial")),
                row.getObject("produced_on", LocalDate.class),
                row.getInt("count"),
                row.getObject("recorded_at", OffsetDateTime.class).toInstant(),
                Optional.ofNullable(row.getObject("ended_at", OffsetDateTime.class))
                        .map(OffsetDateTime::toInstant));
    }
}
