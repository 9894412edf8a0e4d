package org.voltdocket.insight.analysis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.voltdocket.insight.InsightQuery;
import org.voltdocket.insight.Topic;
import org.voltdocket.insight.TopicAnalysis;
import org.voltdocket.insight.TopicResult;
import org.voltdocket.insight.TopicResult.Statement;
import org.voltdocket.insight.TopicTable;
import org.voltdocket.insight.TopicTable.Cell;
import org.voltdocket.insight.TopicTable.Kind;
import org.voltdocket.insight.TopicTable.Row;
import org.voltdocket.insight.analysis.ServiceLifeRepository.Group;
import org.voltdocket.insight.chart.Drawing;
import org.voltdocket.insight.chart.LifeChart;
import org.voltdocket.insight.estimate.ExcessFailures;
import org.voltdocket.insight.estimate.Forecast;
import org.voltdocket.insight.estimate.KaplanMeier;
import org.voltdocket.insight.estimate.Lifetimes;
import org.voltdocket.insight.estimate.Weibull;
import org.voltdocket.kernel.Interval;
import org.voltdocket.ui.TextFormatter;

/**
 * How long batteries last until they are claimed, by type or batch: counted and fitted, with those still in service, and how
 * many claims the coming months will bring. Everything sold counts up to the question's last day, whatever its first.
 */
@Component
class TimeToClaimAnalysis implements TopicAnalysis {

    /** Months ahead that are forecast. */
    static final int AHEAD = 3;

    /** Age that groups are compared at, months. */
    static final double COMPARED = 12;

    /** How many times the usual share a batch must surely have to be named; ours. */
    private static final double EARLY = 1.5;

    /** How often chance alone may have any of those compared named (Bonferroni); ours. */
    private static final double BY_CHANCE = 0.01;

    private static final int NAMED = 5;

    private static final int DRAWN = 6;

    private final ServiceLifeRepository service;
    private final TextFormatter words;

    TimeToClaimAnalysis(ServiceLifeRepository service, TextFormatter words) {
        this.service = service;
        this.words = words;
    }

    private record Judged(Group group, KaplanMeier counted, Optional<Weibull> fit, Optional<Interval> atYear) {

        private static Judged of(Group group) {
            Optional<Weibull> fit = Weibull.fit(group.lives());
            Optional<Interval> atYear = fit.map(one -> {
                Interval alive = one.survival(COMPARED);
                return new Interval(1 - alive.value(), 1 - alive.high(), 1 - alive.low());
            });
            return new Judged(group, KaplanMeier.of(group.lives()), fit, atYear);
        }
    }

    @Override
    public Topic topic() {
        return Topic.TIME_TO_CLAIM;
    }

    @Override
    public TopicResult analyze(InsightQuery query) {
        List<Judged> groups = service.groups(query).stream().map(Judged::of).toList();
        Optional<Weibull> usual = service.together(query).flatMap(Weibull::fit);
        List<Row> rows = new ArrayList<>();
        List<Statement> statements = new ArrayList<>();
        statements.add(
                groups.isEmpty()
                        ? Statement.of("insight.time-to-claim.none")
                        : usual.map(fit -> Statement.of("insight.time-to-claim.all", fit.failedBy(COMPARED)))
                                .orElse(Statement.of("insight.time-to-claim.few")));
        long left = service.leftOut(query);
        if (left > 0) {
            statements.add(Statement.of("insight.time-to-claim.left-out", left));
        }
        for (Judged one : groups) {
            rows.add(row(one, early(one, usual, groups.size())));
        }
        List<Group> batches = service.batches(query);
        batches.stream()
                .map(Judged::of)
                .filter(batch -> early(batch, usual, batches.size()))
                .sorted(Comparator.comparingDouble(
                        (Judged batch) -> -batch.atYear().orElseThrow().low()))
                .limit(NAMED)
                .forEach(batch -> statements.add(named(batch)));
        return new TopicResult(topic(), query, statements, table(rows), drawing(groups));
    }

    /**
     * Of hundreds of batches some lie above by chance, and what a young one will do in a year is drawn out far: so only one that
     * surely lies half as much again above, with more claims for its ages than chance brings to one of so many, is named.
     */
    private static boolean early(Judged one, Optional<Weibull> usual, int compared) {
        if (usual.isEmpty() || one.atYear().isEmpty()) {
            return false;
        }
        Lifetimes lives = one.group().lives();
        return one.atYear().get().low() > EARLY * usual.get().failedBy(COMPARED)
                && ExcessFailures.chance(lives.failed(), ExcessFailures.expected(lives, usual.get()))
                        < BY_CHANCE / compared;
    }

    private static Statement named(Judged batch) {
        Interval atYear = batch.atYear().orElseThrow();
        return Statement.of(
                        "insight.time-to-claim.early",
                        batch.group().name(),
                        atYear.value(),
                        atYear.low(),
                        atYear.high())
                .withKey(batch.group().key());
    }

    @Override
    public Optional<CaseFilter> filter(InsightQuery query, String key) {
        return service.filter(query, key);
    }

    private static TopicTable table(List<Row> rows) {
        return new TopicTable(
                List.of(
                        "group",
                        "sold",
                        "claims",
                        "by-year",
                        "by-year-low",
                        "by-year-high",
                        "shape",
                        "shape-low",
                        "shape-high",
                        "scale",
                        "ahead",
                        "ahead-low",
                        "ahead-high"),
                rows);
    }

    private static Row row(Judged one, boolean marked) {
        Optional<Interval> shape = one.fit().map(Weibull::shape);
        Optional<Interval> ahead =
                one.fit().map(fit -> Forecast.of(fit, one.group().lives(), AHEAD));
        return Row.of(
                one.group().key(),
                marked,
                Cell.text(one.group().name()),
                Cell.count(one.group().lives().watched()),
                Cell.count(one.group().lives().failed()),
                share(one.atYear().map(Interval::value)),
                share(one.atYear().map(Interval::low)),
                share(one.atYear().map(Interval::high)),
                number(shape.map(Interval::value)),
                number(shape.map(Interval::low)),
                number(shape.map(Interval::high)),
                number(one.fit().map(fit -> fit.scale().value())),
                number(ahead.map(Interval::value)),
                number(ahead.map(Interval::low)),
                number(ahead.map(Interval::high)));
    }

    private static Cell share(Optional<Double> value) {
        return value.map(Cell::share).orElse(Cell.unknown(Kind.SHARE));
    }

    private static Cell number(Optional<Double> value) {
        return value.map(Cell::number).orElse(Cell.unknown(Kind.NUMBER));
    }

    /** Those with most claims are drawn; more filter could not be told apart. */
    private Optional<Drawing> drawing(List<Judged> groups) {
        List<LifeChart.Curve> curves = groups.stream()
                .filter(one -> one.group().lives().failed() > 0)
                .sorted(Comparator.comparingLong(
                                (Judged one) -> -one.group().lives().failed())
                        .thenComparing(one -> one.group().name()))
                .limit(DRAWN)
                .map(one -> new LifeChart.Curve(
                        one.group().name(),
                        one.counted(),
                        one.fit(),
                        one.group()
                                .lives()
                                .ages()
                                .get(one.group().lives().ages().size() - 1)
                                .age()))
                .toList();
        return curves.isEmpty()
                ? Optional.empty()
                : Optional.of(LifeChart.of(
                        curves, words.say("insight.time-to-claim.across"), words.say("insight.time-to-claim.up")));
    }
}
