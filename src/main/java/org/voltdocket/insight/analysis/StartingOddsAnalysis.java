package org.voltdocket.insight.analysis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.voltdocket.assessment.CurrentEdition;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.insight.InsightQuery;
import org.voltdocket.insight.Topic;
import org.voltdocket.insight.TopicAnalysis;
import org.voltdocket.insight.TopicResult;
import org.voltdocket.insight.TopicResult.Statement;
import org.voltdocket.insight.TopicTable;
import org.voltdocket.insight.TopicTable.Cell;
import org.voltdocket.insight.TopicTable.Row;
import org.voltdocket.insight.analysis.AuditedOutcomeRepository.Audited;
import org.voltdocket.insight.chart.ReliabilityChart;
import org.voltdocket.insight.estimate.Calibration;
import org.voltdocket.insight.estimate.LearnedOdds;
import org.voltdocket.insight.estimate.Proportion;
import org.voltdocket.kernel.Interval;
import org.voltdocket.ui.TextFormatter;

/**
 * What audited outcomes teach. A bench tells three things apart: a defect, wear, and a sound battery; which of the other causes
 * it was then, no bench can say, so their odds move together. Batteries damaged by use, and those not tested, teach nothing
 * here.
 */
@Component
class StartingOddsAnalysis implements TopicAnalysis {

    /** Weight of the starting odds, in cases (project choice). */
    static final double WORTH = 50;

    private static final String ALL = "all";

    private final AuditedOutcomeRepository outcomes;
    private final CurrentEdition inForce;
    private final TextFormatter words;

    StartingOddsAnalysis(AuditedOutcomeRepository outcomes, CurrentEdition inForce, TextFormatter words) {
        this.outcomes = outcomes;
        this.inForce = inForce;
        this.words = words;
    }

    @Override
    public Topic topic() {
        return Topic.LEARNING;
    }

    @Override
    public TopicResult analyze(InsightQuery query) {
        List<Audited> audited = outcomes.within(query);
        return query.by().equals("odds") ? odds(query, audited) : stated(query, audited);
    }

    @Override
    public Optional<CaseFilter> filter(InsightQuery query, String key) {
        return outcomes.filter(query, key);
    }

    /**
     * What all outcomes together teach.
     *
     * @param odds in the order of {@link AuditedOutcomeRepository.OutcomeClass}
     */
    record Learnt(int outcomes, List<Interval> odds) {}

    Learnt learnt(InsightQuery query) {
        List<Audited> audited = outcomes.within(query);
        return new Learnt(audited.size(), learned(audited));
    }

    private List<Interval> learned(List<Audited> audited) {
        return LearnedOdds.odds(start(), WORTH, counts(audited));
    }

    private double[] start() {
        Map<Cause, Double> odds = inForce.rulebook().startingOdds();
        double defect = odds.get(Cause.BATTERY_DEFECT);
        double worn = odds.get(Cause.BATTERY_WORN);
        return new double[] {defect, worn, 1 - defect - worn};
    }

    private static long[] counts(List<Audited> audited) {
        long[] counts = new long[AuditedOutcomeRepository.OutcomeClass.values().length];
        audited.forEach(one -> counts[one.told().ordinal()]++);
        return counts;
    }

    private TopicResult odds(InsightQuery query, List<Audited> audited) {
        List<Row> rows = new ArrayList<>(rows(ALL, words.say("insight.learning.group.all"), audited));
        audited.stream()
                .map(Audited::group)
                .distinct()
                .sorted(Comparator.naturalOrder())
                .forEach(group -> rows.addAll(rows(
                        group,
                        group,
                        audited.stream()
                                .filter(one -> one.group().equals(group))
                                .toList())));
        List<Statement> statements = List.of(
                Statement.of(
                        "insight.learning.counted",
                        audited.size(),
                        inForce.rulebook().edition()),
                Statement.of("insight.learning.silent"));
        return new TopicResult(
                topic(),
                query,
                statements,
                new TopicTable(
                        List.of("group", "told", "cases", "odds-start", "odds-learned", "odds-low", "odds-high"), rows),
                Optional.empty());
    }

    private List<Row> rows(String key, String name, List<Audited> audited) {
        List<Interval> learned = learned(audited);
        long[] counts = counts(audited);
        double[] start = start();
        List<Row> rows = new ArrayList<>();
        for (AuditedOutcomeRepository.OutcomeClass told : AuditedOutcomeRepository.OutcomeClass.values()) {
            int i = told.ordinal();
            boolean moved =
                    start[i] < learned.get(i).low() || start[i] > learned.get(i).high();
            rows.add(Row.of(
                    key + "." + told.outcome(),
                    moved,
                    Cell.text(name),
                    Cell.word("insight.told", told.name()),
                    Cell.count(counts[i]),
                    Cell.share(start[i]),
                    Cell.share(learned.get(i).value()),
                    Cell.share(learned.get(i).low()),
                    Cell.share(learned.get(i).high())));
        }
        return rows;
    }

    private TopicResult stated(InsightQuery query, List<Audited> audited) {
        List<Calibration.Case> cases = audited.stream()
                .flatMap(one -> one.stated().stream()
                        .map(stated -> new Calibration.Case(stated, one.told().ordinal())))
                .toList();
        TopicTable empty =
                new TopicTable(List.of("stated", "cases", "marked", "came", "share-low", "share-high"), List.of());
        if (cases.isEmpty()) {
            return new TopicResult(
                    topic(), query, List.of(Statement.of("insight.learning.none")), empty, Optional.empty());
        }
        Calibration calibration = Calibration.of(cases);
        List<Row> rows = new ArrayList<>();
        for (Calibration.Bin bin : calibration.bins()) {
            Proportion came = bin.came();
            if (came.known()) {
                Interval share = came.interval();
                rows.add(new Row(
                        Optional.empty(),
                        bin.stated() < share.low() || bin.stated() > share.high(),
                        List.of(
                                Cell.share(bin.stated()),
                                Cell.count(came.of()),
                                Cell.count(came.count()),
                                Cell.share(share.value()),
                                Cell.share(share.low()),
                                Cell.share(share.high()))));
            }
        }
        List<Statement> statements = List.of(
                Statement.of(
                        "insight.learning.scores",
                        calibration.cases(),
                        calibration.brierFirst(),
                        calibration.logScore()),
                Statement.of("insight.learning.three"));
        return new TopicResult(
                topic(),
                query,
                statements,
                new TopicTable(empty.columns(), rows),
                Optional.of(ReliabilityChart.of(
                        calibration, words.say("insight.learning.across"), words.say("insight.learning.up"))));
    }
}
