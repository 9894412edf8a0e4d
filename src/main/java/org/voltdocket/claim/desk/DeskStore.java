package org.voltdocket.claim.desk;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.namedparam.NamedParameterJdbcTemplate;
import org.springframework.stereotype.Component;

/** Reads {@code claim_desk}. */
@Component
class DeskStore {

    private static final int PORTION = 1000;
    private static final int MOST_HITS = 5000;

    private final NamedParameterJdbcTemplate db;
    private final NamedParameterJdbcTemplate streaming;

    DeskStore(JdbcTemplate template) {
        this.db = new NamedParameterJdbcTemplate(template);
        JdbcTemplate portions = new JdbcTemplate(template.getDataSource());
        portions.setFetchSize(PORTION);
        this.streaming = new NamedParameterJdbcTemplate(portions);
    }

    /** Workshops with this part in their names, in lower or upper case; the first 50 by name. */
    List<UUID> workshops(String part) {
        return part.isEmpty()
                ? List.of()
                : db.queryForList(
                        "select id from workshop where strpos(lower(name), lower(:part)) > 0 order by name limit 50",
                        Map.of("part", part),
                        UUID.class);
    }

    /**
     * Where a text finds few claims they are looked up first and then sorted; where it finds many, a walk in the order meets
     * enough of them soon. The planner cannot tell one from the other for a text that is a beginning here and an end there.
     */
    private DeskSql narrowed(DeskSql sql) {
        if (sql.searches()) {
            List<UUID> hits = db.queryForList(sql.hits(MOST_HITS + 1), sql.params(), UUID.class);
            if (hits.size() <= MOST_HITS) {
                sql.only(hits);
            }
        }
        return sql;
    }

    List<DeskLine> lines(DeskSql given, int limit) {
        DeskSql sql = narrowed(given);
        return db.query(sql.select(" limit " + limit), sql.params(), DeskStore::line);
    }

    /** Line by line in portions, however many there are; needs a transaction. */
    void each(DeskSql sql, Consumer<DeskLine> line) {
        streaming.query(sql.select(""), sql.params(), row -> {
            line.accept(line(row, 0));
        });
    }

    private static DeskLine line(ResultSet row, int number) throws SQLException {
        return new DeskLine(
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
                row.getObject("due_on", LocalDate.class),
                row.getString("leaning"),
                row.getString("first_cause"),
                row.getObject("probability", Double.class));
    }
}
