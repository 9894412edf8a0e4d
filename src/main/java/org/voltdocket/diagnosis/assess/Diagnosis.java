package org.voltdocket.diagnosis.assess;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.Estimate;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.cause.BatteryDecision;
import org.voltdocket.diagnosis.cause.CaseDecision;
import org.voltdocket.diagnosis.cause.CauseRanking;
import org.voltdocket.diagnosis.cause.Contradictions;
import org.voltdocket.diagnosis.cause.DecisiveFacts;
import org.voltdocket.diagnosis.cause.LeaningDecision;
import org.voltdocket.diagnosis.cause.MissingEvidence;
import org.voltdocket.diagnosis.cause.NextSteps;
import org.voltdocket.diagnosis.cause.PlausibleFacts;
import org.voltdocket.diagnosis.cause.VerdictSentence;
import org.voltdocket.diagnosis.quantity.RecordingClassifier;
import org.voltdocket.diagnosis.quantity.TestQuantities;
import org.voltdocket.diagnosis.rulebook.EvaluatedRule;
import org.voltdocket.diagnosis.rulebook.RuleEvaluator;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.kernel.Interval;

/** Assesses cases: the entry point of the library. */
public final class Diagnosis {

    private final CaseInput input;
    private final Rulebook book;
    private final CaseMeasurements measured;
    private final List<Finding> contradictions;

    private Diagnosis(CaseInput input, Rulebook book) {
        this.input = input;
        this.book = book;
        this.measured = new CaseMeasurements(input);
        this.contradictions = Contradictions.in(input, measured.evidence);
    }

    /**
     * Assesses a case. Pure: the same input and rule book give the same assessment, whatever the order of the evidence.
     */
    public static Assessment assess(CaseInput input, Rulebook rulebook) {
        return new Diagnosis(input, rulebook).assessment();
    }

    private Assessment assessment() {
        CaseDecision base = decide(input.facts());
        DecisiveFacts facts =
                DecisiveFacts.of(book, base, PlausibleFacts.of(input, measured.newestDay()), this::decide);
        CaseDecision decision = facts.decision();
        List<String> missing = MissingEvidence.of(book, input, decision, facts.missing());
        List<Finding> findings = new ArrayList<>(contradictions);
        decision.rules().forEach(rule -> findings.add(rule.finding()));
        return new Assessment(
                book.edition(),
                decision.battery().verdict(),
                decision.battery(),
                decision.leaning(),
                decision.causes(),
                List.copyOf(findings),
                estimates(measured.estimates),
                measured.regimes,
                VerdictSentence.of(book, decision, !measured.evidence.isEmpty()),
                NextSteps.of(book, decision, missing, facts.missing().size()),
                missing);
    }

    /** Decides the case as if these were its facts. */
    private CaseDecision decide(Facts facts) {
        TestQuantities tests = measured.tests(facts);
        List<EvaluatedRule> rules = RuleEvaluator.evaluate(book, facts, measured.given(facts, tests));
        List<RankedCause> causes = CauseRanking.of(book, rules);
        BatteryReason battery = BatteryDecision.of(
                book,
                rules,
                causes,
                new BatteryDecision.Tests(
                        tests.tested(), tests.judged(), tests.unrated(), Contradictions.ofBattery(contradictions)));
        Leaning leaning =
                LeaningDecision.of(book, battery.verdict(), causes, chargingSeen(), !contradictions.isEmpty());
        return new CaseDecision(rules, causes, CauseRanking.likelihood(book, causes), battery, leaning);
    }

    private boolean chargingSeen() {
        return measured.evidence.stream()
                .anyMatch(e -> e.reading().kind() == EvidenceKind.DRIVE_RECORDING
                        || e.reading().kind() == EvidenceKind.CHARGING_TEST);
    }

    private static Map<String, Estimate> estimates(Map<String, Interval> known) {
        Map<String, Estimate> out = new LinkedHashMap<>();
        CaseMeasurements.UNITS.forEach((name, unit) -> {
            Interval value = known.get(name);
            if (value != null) {
                out.put(name, new Estimate(value.value(), value.low(), value.high(), unit));
            }
        });
        return out;
    }

    /**
     * Classifies a recording: {@link EvidenceKind#DISCHARGE_RECORDING} where a measured current drains the battery
     * steadily, {@link EvidenceKind#CRANKING_RECORDING} where there is one start sampled at 50 Hz or more, {@link
     * EvidenceKind#DRIVE_RECORDING} where there is a start or a running engine, {@link EvidenceKind#STANDING_RECORDING}
     * where the vehicle is parked throughout.
     */
    public static EvidenceKind kindOf(Recording recording) {
        return RecordingClassifier.of(recording);
    }
}
