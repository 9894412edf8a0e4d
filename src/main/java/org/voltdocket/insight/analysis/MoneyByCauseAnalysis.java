package org.voltdocket.insight.analysis;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
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
import org.voltdocket.ui.TextFormatter;

/** Amounts claimed, paid, granted as goodwill, declined and undecided, by first cause and currency. */
@Component
class MoneyByCauseAnalysis implements TopicAnalysis {

    private static final List<String> KINDS = List.of("approved", "goodwill", "declined", "undecided");

    private final JdbcClient db;
    private final TextFormatter words;

    MoneyByCauseAnalysis(JdbcClient db, TextFormatter words) {
        this.db = db;
        this.words = words;
    }

    private record Sum(String cause, String currency, BigDecimal claimed, Map<String, BigDecimal> parts) {

        private BigDecimal paid() {
            return parts.get("approved").add(parts.get("goodwill"));
        }
    }

    @Override
    public Topic topic() {
        return Topic.MONEY;
    }

    @Override
    public TopicResult analyze(InsightQuery query) {
        List<Sum> sums = sums(query);
        List<Row> rows = new ArrayList<>();
        for (Sum sum : sums) {
            rows.add(Row.of(
                    sum.cause() + "." + sum.currency(),
                    false,
                    Cell.word("cause-name", sum.cause()),
                    Cell.text(sum.currency()),
                    Cell.money(sum.claimed()),
                    Cell.money(sum.parts().get("approved")),
                    Cell.money(sum.parts().get("goodwill")),
                    Cell.money(sum.parts().get("declined")),
                    Cell.money(sum.parts().get("undecided"))));
        }
        String main = sums.isEmpty() ? "" : sums.get(0).currency();
        List<Sum> drawn =
                sums.stream().filter(sum -> sum.currency().equals(main)).toList();
        return new TopicResult(
                topic(),
                query,
                statements(drawn, main),
                new TopicTable(
                        List.of("cause", "currency", "claimed", "approved", "goodwill", "declined", "undecided"), rows),
                drawn.isEmpty()
                        ? Optional.empty()
                        : Optional.of(Bars.lying(
                                drawn.stream().map(this::bar).toList(), words.say("insight.money.along", main))));
    }

    @Override
    public Optional<CaseFilter> filter(InsightQuery query, String key) {
        int dot = key.lastIndexOf('.');
        if (dot < 0) {
            return Optional.empty();
        }
        try {
            return Optional.of(filter(query)
                    .and(
                            "i.first_cause = :cause",
                            "cause",
                            Cause.of(key.substring(0, dot)).id())
                    .and("i.currency = :currency", "currency", key.substring(dot + 1)));
        } catch (IllegalArgumentException noCause) {
            return Optional.empty();
        }
    }

    private static CaseFilter filter(InsightQuery query) {
        return CaseFilter.claimedWithin(query).and("i.first_cause is not null");
    }

    /** The currency with most claims first, then most money first. */
    private List<Sum> sums(InsightQuery query) {
        CaseFilter filter = filter(query);
        return db.sql("""
                        select i.first_cause as cause, i.currency, sum(i.claimed) as claimed,
                               sum(i.paid) filter (where i.decision = 'approved') as approved,
                               sum(i.paid) filter (where i.decision = 'goodwill') as goodwill,
                               sum(i.claimed - i.paid) filter (where i.decision is not null) as declined,
                               sum(i.claimed) filter (where i.decision is null) as undecided,
                               sum(count(*)) over (partition by i.currency) as claims
                          from insight_case i where\s""" + filter.where() + " group by 1, 2 order by claims desc, i.currency, claimed desc, 1")
                .params(filter.parameters())
                .query((row, at) -> {
                    Map<String, BigDecimal> parts = new LinkedHashMap<>();
                    for (String kind : KINDS) {
                        parts.put(
                                kind,
                                Optional.ofNullable(row.getBigDecimal(kind)).orElse(BigDecimal.ZERO));
                    }
                    return new Sum(
                            row.getString("cause"), row.getString("currency"), row.getBigDecimal("claimed"), parts);
                })
                .list();
    }

    private Bars.Bar bar(Sum sum) {
        Map<String, Double> parts = new LinkedHashMap<>();
        for (String kind : KINDS) {
            parts.put(
                    words.say("insight.money.kind." + kind),
                    Math.max(0, sum.parts().get(kind).doubleValue()));
        }
        return new Bars.Bar(words.of("cause-name", sum.cause()), parts);
    }

    private static List<Statement> statements(List<Sum> sums, String currency) {
        if (sums.isEmpty()) {
            return List.of(Statement.of("insight.money.none"));
        }
        BigDecimal paid = sums.stream().map(Sum::paid).reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal elsewhere = sums.stream()
                .filter(sum ->
                        !sum.cause().equals("battery-defect") && !sum.cause().equals("battery-worn"))
                .map(Sum::paid)
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        return List.of(
                Statement.of("insight.money.paid", paid, currency),
                Statement.of("insight.money.elsewhere", elsewhere, currency));
    }
}
