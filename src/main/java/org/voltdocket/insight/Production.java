package org.voltdocket.insight;

import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.insight.Insight.Said;
import org.voltdocket.insight.Table.Cell;
import org.voltdocket.insight.Table.Row;
import org.voltdocket.insight.chart.ControlChart;
import org.voltdocket.insight.estimate.PChart;
import org.voltdocket.insight.estimate.Share;
import org.voltdocket.ui.Words;

/** Of the batteries made in each week (ISO 8601), the share that was claimed, or confirmed defective on the bench. */
@Component
class Production implements Study {

    /** Newest weeks shown. */
    static final int WEEKS = 78;

    private final JdbcClient db;
    private final Words words;

    Production(JdbcClient db, Words words) {
        this.db = db;
        this.words = words;
    }

    private record Week(LocalDate monday, long made, String batches) {

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
    public Insight answer(Question question) {
        List<Week> weeks = weeks(question);
        Map<LocalDate, Long> claims = claims(question);
        List<Share> shares = weeks.stream()
                .map(week -> new Share(Math.min(week.made(), claims.getOrDefault(week.monday(), 0L)), week.made()))
                .toList();
        PChart chart = PChart.of(shares);
        List<Row> rows = new ArrayList<>();
        List<Said> said = new ArrayList<>();
        said.add(
                weeks.isEmpty()
                        ? Said.of("insight.production-weeks.none")
                        : Said.of("insight.production-weeks.all." + question.by(), weeks.size(), chart.centre()));
        for (PChart.Point point : chart.points()) {
            Week week = weeks.get(point.sample());
            rows.add(row(week, point));
            double share = (double) point.share().count() / point.share().of();
            if (point.outside() && share > point.high()) {
                said.add(Said.of("insight.production-weeks.high", week.name(), share, week.batches())
                        .leadingTo(week.monday().toString()));
            }
        }
        return new Insight(
                topic(),
                question,
                said,
                new Table(List.of("week", "batches", "marked", "made", "share", "limit-low", "limit-high"), rows),
                Optional.of(weeks)
                        .filter(some -> !some.isEmpty())
                        .map(some -> ControlChart.of(
                                chart,
                                some.stream().map(Week::name).toList(),
                                words.say("insight.production-weeks.across"),
                                words.say("insight.production-weeks.up." + question.by()),
                                words.say("insight.chart.limits"),
                                words.say("insight.chart.outside"))));
    }

    @Override
    public Optional<Lines> behind(Question question, String key) {
        try {
            LocalDate monday = LocalDate.parse(key);
            return Optional.of(marked(question)
                    .and("i.produced_on >= :monday", "monday", monday)
                    .and("i.produced_on < :next", "next", monday.plusDays(7))
                    .and("i.batch is not null"));
        } catch (java.time.format.DateTimeParseException noWeek) {
            return Optional.empty();
        }
    }

    private static Row row(Week week, PChart.Point point) {
        return Row.of(
                week.monday().toString(),
                point.outside(),
                Cell.text(week.name()),
                Cell.text(week.batches()),
                Cell.count(point.share().count()),
                Cell.count(point.share().of()),
                Cell.share((double) point.share().count() / point.share().of()),
                Cell.share(point.low()),
                Cell.share(point.high()));
    }

    private static Lines marked(Question question) {
        Lines claimed = Lines.claimedWithin(question);
        return question.by().equals("confirmed") ? claimed.and("i.outcome = 'defect-confirmed'") : claimed;
    }

    private List<Week> weeks(Question question) {
        List<Week> newest = db.sql("""
                     select date_trunc('week', produced_on)::date as monday, sum(count) as made,
                            string_agg(distinct type || ' ' || batch, ', ' order by type || ' ' || batch) as batches
                       from produced_range where ended_at is null and produced_on <= :to
                      group by 1 order by 1 desc limit :weeks""")
                .param("to", question.to())
                .param("weeks", WEEKS)
                .query((row, at) -> new Week(
                        row.getObject("monday", LocalDate.class), row.getLong("made"), row.getString("batches")))
                .list();
        return newest.stream()
                .sorted(java.util.Comparator.comparing(Week::monday))
                .toList();
    }

    private Map<LocalDate, Long> claims(Question question) {
        Lines lines = marked(question).and("i.batch is not null");
        return db
                .sql(
                        "select date_trunc('week', i.produced_on)::date as monday, count(*) as n from insight_case i where "
                                + lines.where() + " group by 1")
                .params(lines.parameters())
                .query((row, at) -> Map.entry(row.getObject("monday", LocalDate.class), row.getLong("n")))
                .list()
                .stream()
                .collect(java.util.stream.Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }
}
