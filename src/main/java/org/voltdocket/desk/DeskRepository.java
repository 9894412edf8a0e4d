package org.voltdocket.desk;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.namedparam.NamedParameterJdbcTemplate;
import org.springframework.stereotype.Component;

/** Reads {@code claim_list}. */
@Component
class DeskRepository {

    private static final int PORTION = 1000;

    /** Hits that are sorted at once. */
    private static final int FEW_HITS = 500;

    /** So many are read one by one where there are more; a page is full by then where every 40th is meant. */
    private static final int GLANCE = 2000;

    /** More hits than these are not sorted. */
    private static final int MOST_HITS = 5000;

    private final NamedParameterJdbcTemplate db;
    private final NamedParameterJdbcTemplate streaming;

    DeskRepository(JdbcTemplate template) {
        this.db = new NamedParameterJdbcTemplate(template);
        JdbcTemplate portions = new JdbcTemplate(template.getDataSource());
        portions.setFetchSize(PORTION);
        this.streaming = new NamedParameterJdbcTemplate(portions);
    }

    /**
     * Workshops with this part in their names, in lower or upper case.
     *
     * @param most how many at most
     */
    List<UUID> workshops(String part, int most) {
        return part.isEmpty()
                ? List.of()
                : db.queryForList(
                        "select id from workshop_summary where strpos(lower(name), lower(:part)) > 0 order by name limit :most",
                        Map.of("part", part, "most", most),
                        UUID.class);
    }

    /** Claims with an objection that waits, of one workshop or of all. */
    long objections(Optional<UUID> workshop) {
        Long count = db.queryForObject(
                "select count(*) from claim_list where objected_at is not null"
                        + (workshop.isPresent() ? " and workshop_id = :own" : ""),
                workshop.<Map<String, Object>>map(own -> Map.of("own", own)).orElse(Map.of()),
                Long.class);
        return count == null ? 0 : count;
    }

    /**
     * A text that few claims have is looked up by the index of each key and then sorted; one that is common fills a page among
     * the next few in the order; between these the walk goes on, which meets enough of them soon. The planner cannot tell which
     * for a text that is a beginning here and an end there.
     */
    List<DeskItem> lines(DeskSearchSql sql, int limit) {
        return lines(sql, limit, FEW_HITS, GLANCE, MOST_HITS);
    }

    List<DeskItem> lines(DeskSearchSql sql, int limit, int fewHits, int glance, int mostHits) {
        String most = " limit " + limit;
        if (!sql.searches()) {
            return list(sql.select(most), sql);
        }
        if (!many(sql, fewHits)) {
            return list(sql.selectHits(fewHits, most), sql);
        }
        List<DeskItem> near = list(sql.glance(glance, most), sql);
        if (near.size() == limit) {
            return near;
        }
        return list(many(sql, mostHits) ? sql.select(most) : sql.selectHits(mostHits, most), sql);
    }

    private boolean many(DeskSearchSql sql, int mostHits) {
        return Boolean.TRUE.equals(db.queryForObject(sql.manyHits(mostHits), sql.params(), Boolean.class));
    }

    private List<DeskItem> list(String select, DeskSearchSql sql) {
        return db.query(select, sql.params(), DeskRepository::line);
    }

    /** Line by line in portions, however many there are; needs a transaction. */
    void each(DeskSearchSql sql, Consumer<DeskItem> line) {
        streaming.query(sql.select(""), sql.params(), row -> {
            line.accept(line(row, 0));
        });
    }

    private static DeskItem line(ResultSet row, int number) throws SQLException {
        return new DeskItem(
                row.getObject("claim_id", UUID.class),
                row.getLong("ordinal"),
                row.getString("number"),
                row.getString("battery_serial"),
                row.getString("vin"),
                row.getObject("workshop_id", UUID.class),
                row.getString("workshop"),
                row.getBigDecimal("amount"),
                row.getString("currency"),
                row.getString("state"),
                row.getLong("version"),
                row.getTimestamp("waiting_since").toInstant(),
                row.getString("taken_by"),
                row.getBoolean("answered"),
                row.getString("proposed_by"),
                row.getTimestamp("objected_at") != null,
                row.getObject("due_on", LocalDate.class),
                row.getString("leaning"),
                row.getString("first_cause"),
                row.getObject("probability", Double.class));
    }
}
