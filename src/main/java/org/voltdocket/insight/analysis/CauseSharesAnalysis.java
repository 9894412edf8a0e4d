package org.voltdocket.insight.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.insight.InsightQuery;
import org.voltdocket.insight.Topic;
import org.voltdocket.insight.TopicAnalysis;
import org.voltdocket.insight.TopicResult;
import org.voltdocket.insight.TopicResult.Statement;
import org.voltdocket.insight.TopicTable;
import org.voltdocket.insight.TopicTable.Cell;
import org.voltdocket.insight.TopicTable.Row;
import org.voltdocket.insight.chart.Bars;
import org.voltdocket.insight.estimate.Proportion;
import org.voltdocket.kernel.Interval;
import org.voltdocket.ui.TextFormatter;

/** Frequency of first causes of claimed cases. */
@Component
class CauseSharesAnalysis implements TopicAnalysis {

    private final JdbcClient db;
    private final TextFormatter words;

    CauseSharesAnalysis(JdbcClient db, TextFormatter words) {
        this.db = db;
        this.words = words;
    }

    private record Counted(String cause, long cases) {}

    @Override
    public Topic topic() {
        return Topic.CAUSES;
    }

    @Override
    public TopicResult analyze(InsightQuery query) {
        CaseFilter filter = filter(query);
        List<Counted> causes = db.sql("select i.first_cause as cause, count(*) as n from insight_case i where "
                        + filter.where() + " group by 1 order by 2 desc, 1")
                .params(filter.parameters())
                .query((row, at) -> new Counted(row.getString("cause"), row.getLong("n")))
                .list();
        long all = causes.stream().mapToLong(Counted::cases).sum();
        List<Row> rows = new ArrayList<>();
        double together = 0;
        for (Counted one : causes) {
            Interval share = new Proportion(one.cases(), all).interval();
            together += share.value();
            rows.add(Row.of(
                    one.cause(),
                    false,
                    Cell.word("cause-name", one.cause()),
                    Cell.count(one.cases()),
                    Cell.share(share.value()),
                    Cell.share(share.low()),
                    Cell.share(share.high()),
                    Cell.share(Math.min(1, together))));
        }
        List<Statement> statements = causes.isEmpty()
                ? List.of(Statement.of("insight.causes.none"))
                : List.of(Statement.of(
                                "insight.causes.first",
                                words.of("cause-name", causes.get(0).cause()),
                                new Proportion(causes.get(0).cases(), all)
                                        .interval()
                                        .value(),
                                all)
                        .withKey(causes.get(0).cause()));
        return new TopicResult(
                topic(),
                query,
                statements,
                new TopicTable(List.of("cause", "cases", "share", "share-low", "share-high", "together"), rows),
                Optional.of(causes)
                        .filter(some -> !some.isEmpty())
                        .map(some -> Bars.pareto(
                                some.stream()
                                        .map(one -> new Bars.Bar(
                                                words.of("cause-name", one.cause()),
                                                Map.of(words.say("insight.causes.up"), (double) one.cases())))
                                        .toList(),
                                words.say("insight.causes.up"),
                                words.say("insight.causes.together"))));
    }

    @Override
    public Optional<CaseFilter> filter(InsightQuery query, String key) {
        try {
            return Optional.of(filter(query)
                    .and("i.first_cause = :cause", "cause", Cause.of(key).id()));
        } catch (IllegalArgumentException noCause) {
            return Optional.empty();
        }
    }

    private static CaseFilter filter(InsightQuery query) {
        CaseFilter judged = CaseFilter.claimedWithin(query).and("i.first_cause is not null");
        return query.by().equals("all") ? judged : judged.and("i.chemistry = :chemistry", "chemistry", query.by());
    }
}
