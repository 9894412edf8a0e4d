package org.voltdocket.diagnosis;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Assessment.Estimate;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.cause.Advice;
import org.voltdocket.diagnosis.cause.BatteryDecision;
import org.voltdocket.diagnosis.cause.CauseRanking;
import org.voltdocket.diagnosis.cause.Contradictions;
import org.voltdocket.diagnosis.cause.LeaningDecision;
import org.voltdocket.diagnosis.quantity.RecordingClassifier;
import org.voltdocket.diagnosis.rulebook.EvaluatedRule;
import org.voltdocket.diagnosis.rulebook.RuleEvaluator;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.kernel.Interval;

/** Assesses cases: the entry point of the library. */
public final class Diagnosis {

    private Diagnosis() {}

    /**
     * Assesses a case. Pure: the same input and rule book give the same assessment, whatever the order of the evidence.
     */
    public static Assessment assess(CaseInput input, Rulebook rulebook) {
        CaseMeasurements measured = new CaseMeasurements(input);
        List<EvaluatedRule> rules = RuleEvaluator.judge(rulebook, input.facts(), measured.measurements);
        List<Finding> contradictions = Contradictions.in(input, measured.evidence);
        List<RankedCause> causes = CauseRanking.of(rulebook, rules);
        BatteryReason battery = BatteryDecision.of(
                rulebook,
                rules,
                causes,
                new BatteryDecision.Tests(
                        measured.tests.tested(),
                        measured.tests.judged(),
                        measured.tests.unrated(),
                        Contradictions.ofBattery(contradictions)));
        Leaning leaning = LeaningDecision.of(
                rulebook, battery.verdict(), causes, chargingSeen(measured), !contradictions.isEmpty());
        List<String> missing = Advice.missing(rulebook, input, battery, leaning, causes);
        List<Finding> findings = new ArrayList<>(contradictions);
        rules.forEach(one -> findings.add(one.finding()));
        return new Assessment(
                rulebook.edition(),
                battery.verdict(),
                battery,
                leaning,
                causes,
                List.copyOf(findings),
                estimates(measured.estimates),
                measured.regimes,
                Advice.said(battery, leaning, causes),
                Advice.nextSteps(rulebook, battery, leaning, causes, missing),
                missing);
    }

    private static boolean chargingSeen(CaseMeasurements measured) {
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
     * What kind of recording this is: {@link EvidenceKind#DISCHARGE_RECORDING} where a measured current drains the
     * battery steadily, {@link EvidenceKind#CRANKING_RECORDING} where there is one start sampled at 50 Hz or more, {@link
     * EvidenceKind#DRIVE_RECORDING} where there is a start or a running engine, {@link EvidenceKind#STANDING_RECORDING}
     * where the battery rests throughout.
     */
    public static EvidenceKind kindOf(Recording recording) {
        return RecordingClassifier.of(recording);
    }
}
