package org.voltdocket.insight.analysis;

import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.insight.InsightQuery;
import org.voltdocket.insight.Topic;
import org.voltdocket.insight.TopicAnalysis;
import org.voltdocket.insight.TopicResult;
import org.voltdocket.insight.TopicResult.Statement;
import org.voltdocket.insight.TopicTable;
import org.voltdocket.insight.TopicTable.Cell;
import org.voltdocket.insight.TopicTable.Row;
import org.voltdocket.kernel.Vin;

/** Vehicles with several claimed batteries, most first. */
@Component
class RepeatedVehiclesAnalysis implements TopicAnalysis {

    /** Vehicles listed. */
    static final int LISTED = 200;

    private final JdbcClient db;

    RepeatedVehiclesAnalysis(JdbcClient db) {
        this.db = db;
    }

    @Override
    public Topic topic() {
        return Topic.REPEATED;
    }

    @Override
    public TopicResult analyze(InsightQuery query) {
        CaseFilter filter = CaseFilter.claimedWithin(query);
        List<Row> rows = db.sql("""
                        select i.vin, count(distinct i.battery_serial) as batteries, count(distinct i.workshop_id) as workshops,
                               (array_agg(i.first_cause order by i.claimed_at desc))[1] as cause,
                               count(*) over () as vehicles
                          from insight_case i where\s""" + filter.where()
                        + " group by i.vin having count(distinct i.battery_serial) > 1 order by 2 desc, 1 limit "
                        + LISTED)
                .params(filter.parameters())
                .query((row, at) -> Row.of(
                        row.getString("vin"),
                        row.getLong("batteries") > 2,
                        Cell.text(row.getString("vin")),
                        Cell.count(row.getLong("batteries")),
                        Cell.count(row.getLong("workshops")),
                        row.getString("cause") == null
                                ? Cell.unknown(TopicTable.Kind.WORD)
                                : Cell.word("cause-name", row.getString("cause"))))
                .list();
        long more = rows.stream().filter(Row::marked).count();
        return new TopicResult(
                topic(),
                query,
                List.of(Statement.of("insight.repeated-vehicles.all", rows.size(), more, LISTED)),
                new TopicTable(List.of("vin", "batteries", "workshops", "cause-last"), rows),
                Optional.empty());
    }

    @Override
    public Optional<CaseFilter> filter(InsightQuery query, String key) {
        try {
            return Optional.of(CaseFilter.claimedWithin(query)
                    .and("i.vin = :vin", "vin", Vin.parse(key).value()));
        } catch (IllegalArgumentException noVin) {
            return Optional.empty();
        }
    }
}
