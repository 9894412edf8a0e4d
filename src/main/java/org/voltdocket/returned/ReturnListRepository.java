package org.voltdocket.returned;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.BatterySerial;

/** Lists of returned batteries, each in one query. */
@Component
public class ReturnListRepository {

    private static final String SELECT = """
            select r.*, p.number as pallet, f.number as case_number, w.name as workshop, pl.place, l.number as lot, k.rank,
                   coalesce(co.cracked or co.leaking or co.swollen or co.frozen, false) as dangerous, o.outcome
            from returned_battery r
            left join pallet p on p.id = r.pallet_id
            left join lateral (select case_id from returned_case c where c.return_id = r.id
                order by c.ordinal desc limit 1) c on true
            left join case_summary f on f.id = c.case_id
            left join workshop_summary w on w.id = f.opened_workshop
            left join lateral (select place from returned_place x where x.return_id = r.id
                order by x.ordinal desc limit 1) pl on true
            left join lateral (select * from returned_condition x where x.return_id = r.id
                order by x.ordinal desc limit 1) co on true
            left join lateral (select outcome from returned_outcome x where x.return_id = r.id
                order by x.ordinal desc limit 1) o on true
            left join sampling_rank k on k.return_id = r.id
            left join sampling_lot l on l.id = k.lot_id
            """;

    private final JdbcClient db;
    private final Clock clock;

    ReturnListRepository(JdbcClient db, Clock clock) {
        this.db = db;
        this.clock = clock;
    }

    public List<ReturnListItem> find(ReturnQuery query) {
        return db.sql(SELECT + """
                        where (:q = '' or strpos(r.battery_serial, upper(:q)) > 0 or strpos(r.number, upper(:q)) > 0
                            or strpos(coalesce(f.number, ''), upper(:q)) > 0 or strpos(lower(coalesce(pl.place, '')),
                            lower(:q)) > 0)
                        and (:state = '' or (:state = 'done') = (o.outcome is not null))
                        and (:warning = '' or :warning = any(r.warnings))
                        order by r.ordinal desc limit :limit""")
                .param("q", query.q())
                .param("state", query.state())
                .param("warning", query.warning())
                .param("limit", query.limit())
                .query((row, n) -> item(row))
                .list();
    }

    public List<ReturnListItem> ofPallet(UUID pallet) {
        return db.sql(SELECT + "where r.pallet_id = ? order by r.ordinal")
                .param(pallet)
                .query((row, n) -> item(row))
                .list();
    }

    public List<ReturnListItem> ofLot(UUID lot) {
        return db.sql(SELECT + "where k.lot_id = ? order by k.rank")
                .param(lot)
                .query((row, n) -> item(row))
                .list();
    }

    private ReturnListItem item(ResultSet row) throws SQLException {
        Instant arrived = row.getObject("arrived_at", OffsetDateTime.class).toInstant();
        return new ReturnListItem(
                row.getObject("id", UUID.class),
                row.getString("number"),
                new BatterySerial(row.getString("battery_serial")),
                arrived,
                days(arrived, clock.instant()),
                ReturnRepository.warnings(row),
                Optional.ofNullable(row.getString("pallet")),
                Optional.ofNullable(row.getString("case_number")),
                Optional.ofNullable(row.getString("workshop")),
                Optional.ofNullable(row.getString("place")),
                row.getBoolean("dangerous"),
                Optional.ofNullable(row.getString("lot")),
                Optional.ofNullable(row.getObject("rank", Integer.class)),
                Optional.ofNullable(row.getString("outcome")).flatMap(BenchOutcome::of));
    }

    public static long days(Instant arrived, Instant now) {
        return Math.max(0, Duration.between(arrived, now).toDays());
    }
}
