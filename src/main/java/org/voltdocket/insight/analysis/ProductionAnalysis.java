package org.voltdocket.insight.analysis;

import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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
import org.voltdocket.insight.chart.ControlChart;
import org.voltdocket.insight.estimate.PChart;
import org.voltdocket.insight.estimate.Proportion;
import org.voltdocket.ui.TextFormatter;

/**
 * Of the batteries made in each week (ISO 8601), the share that was claimed. By the usual way only claims within {@link #EARLY}
 * days of production count, and only weeks that are older, so that every week has had the same time.
 */
@Component
class ProductionAnalysis implements TopicAnalysis {

    /** Newest weeks shown. */
    static final int WEEKS = 78;

    /** Days after production within which a claim is an early one. */
    static final int EARLY = 180;

    private final JdbcClient db;
    private final TextFormatter words;

    ProductionAnalysis(JdbcClient db, TextFormatter words) {
        this.db = db;
        this.words = words;
    }

    private record Week(LocalDate monday, long made) {

        private String name() {
            return String.format(
                    Locale.ROOT,
                    "%d-W%02d",
                    monday.get(IsoFields.WEEK_BASED_YEAR),
                    monday.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
        }
    }

    @Override
    public Topic topic() {
        return Topic.PRODUCTION;
    }

    @Override
    public TopicResult analyze(InsightQuery query) {
        List<Week> weeks = weeks(query);
        Map<LocalDate, Claims> claims = claims(query);
        List<Proportion> shares = weeks.stream()
                .map(week -> new Proportion(
                        Math.min(
                                week.made(),
                                claims.getOrDefault(week.monday(), Claims.NONE).all()),
                        week.made()))
                .toList();
        PChart chart = PChart.of(shares);
        List<Row> rows = new ArrayList<>();
        List<Statement> statements = new ArrayList<>();
        statements.add(
                weeks.isEmpty()
                        ? Statement.of("insight.production-weeks.none")
                        : Statement.of("insight.production-weeks.all." + query.by(), weeks.size(), chart.centre()));
        for (PChart.Point point : chart.points()) {
            Week week = weeks.get(point.sample());
            Claims of = claims.getOrDefault(week.monday(), Claims.NONE);
            rows.add(row(week, of, point));
            double share = (double) point.share().count() / point.share().of();
            if (point.outside() && share > point.high()) {
                statements.add(Statement.of(
                                "insight.production-weeks.high", week.name(), share, of.batch(), of.most(), of.all())
                        .withKey(week.monday().toString()));
            }
        }
        return new TopicResult(
                topic(),
                query,
                statements,
                new TopicTable(
                        List.of("week", "marked", "made", "share", "limit-low", "limit-high", "batch-most", "most"),
                        rows),
                Optional.of(weeks).filter(some -> !some.isEmpty()).map(some -> drawing(chart, some, query)));
    }

    private org.voltdocket.insight.chart.Drawing drawing(PChart chart, List<Week> weeks, InsightQuery query) {
        return ControlChart.of(
                chart,
                weeks.stream().map(Week::name).toList(),
                words.say("insight.production-weeks.across"),
                words.say("insight.production-weeks.up." + query.by()),
                words.say("insight.chart.limits"),
                words.say("insight.chart.outside"));
    }

    @Override
    public Optional<CaseFilter> filter(InsightQuery query, String key) {
        try {
            LocalDate monday = LocalDate.parse(key);
            return Optional.of(marked(query)
                    .and("i.produced_on >= :monday", "monday", monday)
                    .and("i.produced_on < :next", "next", monday.plusDays(7))
                    .and("i.batch is not null"));
        } catch (java.time.format.DateTimeParseException noWeek) {
            return Optional.empty();
        }
    }

    private static Row row(Week week, Claims of, PChart.Point point) {
        return Row.of(
                week.monday().toString(),
                point.outside(),
                Cell.text(week.name()),
                Cell.count(point.share().count()),
                Cell.count(point.share().of()),
                Cell.share((double) point.share().count() / point.share().of()),
                Cell.share(point.low()),
                Cell.share(point.high()),
                Cell.text(of.batch()),
                Cell.count(of.most()));
    }

    private static CaseFilter marked(InsightQuery query) {
        CaseFilter claimed = CaseFilter.claimedWithin(query);
        return switch (query.by()) {
            case "early" -> claimed.and("i.claimed_at < i.produced_on + interval '" + EARLY + " days'");
            case "confirmed" -> claimed.and("i.outcome = 'defect-confirmed'");
            default -> claimed;
        };
    }

    private List<Week> weeks(InsightQuery query) {
        LocalDate newest = query.by().equals("early") ? query.to().minusDays(EARLY + 7) : query.to();
        List<Week> weeks = db.sql("""
                     select date_trunc('week', produced_on)::date as monday, sum(count) as made
                       from current_produced_range where produced_on <= :to
                      group by 1 order by 1 desc limit :weeks""")
                .param("to", newest)
                .param("weeks", WEEKS)
                .query((row, at) -> new Week(row.getObject("monday", LocalDate.class), row.getLong("made")))
                .list();
        return weeks.stream()
                .sorted(java.util.Comparator.comparing(Week::monday))
                .toList();
    }

    /**
     * Claims of a week.
     *
     * @param batch the one with most of them, with its type
     */
    private record Claims(long all, String batch, long most) {

        private static final Claims NONE = new Claims(0, "–", 0);
    }

    private Map<LocalDate, Claims> claims(InsightQuery query) {
        CaseFilter filter = marked(query).and("i.batch is not null");
        Map<LocalDate, Claims> weeks = new java.util.LinkedHashMap<>();
        db.sql(
                        "select date_trunc('week', i.produced_on)::date as monday, i.type || ' ' || i.batch as batch, count(*) as n"
                                + " from insight_case i where " + filter.where()
                                + " group by 1, 2 order by 1, 3 desc, 2")
                .params(filter.parameters())
                .query(row -> {
                    Claims one = new Claims(row.getLong("n"), row.getString("batch"), row.getLong("n"));
                    weeks.merge(
                            row.getObject("monday", LocalDate.class),
                            one,
                            (first, more) -> new Claims(first.all() + more.all(), first.batch(), first.most()));
                });
        return weeks;
    }
}
