package org.voltdocket.returned.pallet;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.BatterySerial;

/** Pallets and their lists in PostgreSQL. */
@Component
public class PalletRepository {

    private static final String SELECT = """
            select p.*, (select count(*) from pallet_line l where l.pallet_id = p.id) as listed,
                   (select count(*) from pallet_line l where l.pallet_id = p.id and exists (select 1 from returned_battery r
                        where r.pallet_id = p.id and r.battery_serial = l.battery_serial)) as arrived,
                   (select count(*) from returned_battery r where r.pallet_id = p.id and not exists (select 1
                        from pallet_line l where l.pallet_id = p.id and l.battery_serial = r.battery_serial)) as unlisted
            from pallet p
            """;

    private final JdbcClient db;

    PalletRepository(JdbcClient db) {
        this.db = db;
    }

    /** The id and day of a pallet. */
    public record Row(UUID id, LocalDate arrivedOn) {}

    public Optional<Row> find(String number) {
        return db.sql("select id, arrived_on from pallet where number = ?")
                .param(number)
                .query((row, n) ->
                        new Row(row.getObject("id", UUID.class), row.getObject("arrived_on", LocalDate.class)))
                .optional();
    }

    public boolean lists(UUID pallet, BatterySerial serial) {
        return db.sql("select exists (select 1 from pallet_line where pallet_id = ? and battery_serial = ?)")
                .param(pallet)
                .param(serial.value())
                .query(Boolean.class)
                .single();
    }

    /** @return false if the number is taken */
    boolean add(UUID id, PalletDeliveryNote note, OffsetDateTime at, String by) {
        int added = db.sql("""
                        insert into pallet (id, number, sender, arrived_on, noted_at, noted_by) values (?, ?, ?, ?, ?, ?)
                        on conflict (number) do nothing""")
                .param(id)
                .param(note.number())
                .param(note.sender())
                .param(note.arrivedOn())
                .param(at.withOffsetSameInstant(ZoneOffset.UTC))
                .param(by)
                .update();
        if (added == 1) {
            String[] serials = note.serials().stream().map(BatterySerial::value).toArray(String[]::new);
            db.sql("insert into pallet_line (pallet_id, line, battery_serial)"
                            + " select ?, n, serial from unnest(?) with ordinality as t (serial, n)")
                    .param(id)
                    .param(serials)
                    .update();
        }
        return added == 1;
    }

    List<Pallet> all() {
        return db.sql(SELECT + "order by p.arrived_on desc, p.noted_at desc limit 200")
                .query(PalletRepository::pallet)
                .list();
    }

    Optional<Pallet> find(UUID id) {
        return db.sql(SELECT + "where p.id = ?")
                .param(id)
                .query(PalletRepository::pallet)
                .optional();
    }

    List<BatterySerial> lines(UUID id) {
        return db.sql("select battery_serial from pallet_line where pallet_id = ? order by line")
                .param(id)
                .query((row, n) -> new BatterySerial(row.getString(1)))
                .list();
    }

    private static Pallet pallet(ResultSet row, int n) throws SQLException {
        return new Pallet(
                row.getObject("id", UUID.class),
                row.getString("number"),
                row.getString("sender"),
                row.getObject("arrived_on", LocalDate.class),
                row.getObject("noted_at", OffsetDateTime.class).toInstant(),
                row.getString("noted_by"),
                row.getInt("listed"),
                row.getInt("arrived"),
                row.getInt("unlisted"));
    }
}
