package org.voltdocket.insight;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads the cases behind a number. */
@Component
class CaseSelectionRepository {

    private final JdbcClient db;

    CaseSelectionRepository(JdbcClient db) {
        this.db = db;
    }

    CaseSelection find(TopicAnalysis.CaseFilter filter) {
        long all = db.sql("select count(*) from insight_case i where " + filter.where())
                .params(filter.parameters())
                .query(Long.class)
                .single();
        List<CaseSelection.Line> listed = db.sql("select i.* from insight_case i where " + filter.where()
                        + " order by i.claimed_at desc nulls last, i.number desc limit " + InsightService.LISTED)
                .params(filter.parameters())
                .query((row, at) -> line(row))
                .list();
        return new CaseSelection(all, listed);
    }

    private static CaseSelection.Line line(ResultSet row) throws SQLException {
        return new CaseSelection.Line(
                row.getString("number"),
                row.getString("battery_serial"),
                row.getString("vin"),
                Optional.ofNullable(row.getString("workshop")),
                Optional.ofNullable(row.getString("first_cause")),
                Optional.ofNullable(row.getString("outcome")),
                Optional.ofNullable(row.getString("claim_state")),
                Optional.ofNullable(row.getBigDecimal("claimed")),
                Optional.ofNullable(row.getString("currency")),
                Optional.ofNullable(row.getObject("claimed_at", OffsetDateTime.class))
                        .map(OffsetDateTime::toInstant),
                Optional.ofNullable(row.getObject("sold_on", LocalDate.class)));
    }
}
