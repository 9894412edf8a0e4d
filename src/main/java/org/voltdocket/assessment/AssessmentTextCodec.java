package org.voltdocket.assessment;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.voltdocket.assessment.AssessmentView.CauseView;
import org.voltdocket.assessment.AssessmentView.EstimateView;
import org.voltdocket.assessment.AssessmentView.FindingView;
import org.voltdocket.assessment.AssessmentView.RegimeView;
import org.voltdocket.assessment.AssessmentView.WeightView;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.Result;
import tools.jackson.core.type.TypeReference;

/** An assessment as text that is kept, and back. */
final class AssessmentTextCodec {

    private AssessmentTextCodec() {}

    static String body(Assessment assessment, Instant assessedAt) {
        return CanonicalAssessmentJson.JSON.writeValueAsString(view(assessment, assessedAt));
    }

    static String regimes(Assessment assessment) {
        Map<String, List<RegimeView>> byEvidence = new TreeMap<>();
        assessment
                .regimes()
                .forEach((evidence, spans) -> byEvidence.put(
                        evidence, spans.stream().map(RegimeView::of).toList()));
        return CanonicalAssessmentJson.JSON.writeValueAsString(byEvidence);
    }

    static Assessment read(String body, String regimes) {
        AssessmentView view = CanonicalAssessmentJson.JSON.readValue(body, AssessmentView.class);
        Map<String, List<RegimeView>> spans = CanonicalAssessmentJson.JSON.readValue(regimes, new TypeReference<>() {});
        Map<String, List<Assessment.RegimeSpan>> byEvidence = new LinkedHashMap<>();
        spans.forEach((evidence, all) -> byEvidence.put(
                evidence,
                all.stream()
                        .map(s -> new Assessment.RegimeSpan(
                                s.from().doubleValue(), s.to().doubleValue(), Regime.of(s.regime())))
                        .toList()));
        Map<String, Assessment.Estimate> estimates = new LinkedHashMap<>();
        view.estimates()
                .forEach((name, e) -> estimates.put(
                        name,
                        new Assessment.Estimate(
                                e.value().doubleValue(),
                                e.low().doubleValue(),
                                e.high().doubleValue(),
                                e.unit())));
        return new Assessment(
                view.rulebook(),
                BatteryVerdict.of(view.batteryVerdict()),
                BatteryReason.of(view.batteryReason()),
                Leaning.of(view.leaning()),
                view.causes().stream().map(AssessmentTextCodec::cause).toList(),
                view.findings().stream().map(AssessmentTextCodec::finding).toList(),
                estimates,
                byEvidence,
                view.said(),
                view.nextSteps(),
                view.missing());
    }

    private static AssessmentView view(Assessment a, Instant assessedAt) {
        List<CauseView> causes = new ArrayList<>();
        for (Assessment.RankedCause cause : a.causes()) {
            causes.add(new CauseView(
                    cause.cause().id(),
                    CanonicalAssessmentJson.number(cause.probability()),
                    cause.weights().stream()
                            .map(w -> new WeightView(w.finding(), CanonicalAssessmentJson.number(w.decibans())))
                            .toList()));
        }
        Map<String, EstimateView> estimates = new LinkedHashMap<>();
        a.estimates()
                .forEach((name, e) -> estimates.put(
                        name,
                        new EstimateView(
                                CanonicalAssessmentJson.number(e.value()),
                                CanonicalAssessmentJson.number(e.low()),
                                CanonicalAssessmentJson.number(e.high()),
                                e.unit())));
        return new AssessmentView(
                a.rulebook(),
                assessedAt,
                a.batteryVerdict().id(),
                a.batteryReason().id(),
                a.leaning().id(),
                a.said(),
                causes,
                a.findings().stream().map(FindingView::of).toList(),
                estimates,
                a.nextSteps(),
                a.missing());
    }

    private static Assessment.RankedCause cause(CauseView view) {
        return new Assessment.RankedCause(
                Cause.of(view.cause()),
                view.probability().doubleValue(),
                view.weights().stream()
                        .map(w ->
                                new Assessment.Weight(w.finding(), w.decibans().doubleValue()))
                        .toList());
    }

    private static Assessment.Finding finding(FindingView f) {
        return new Assessment.Finding(
                f.id(),
                f.rule(),
                f.evidence(),
                f.quantity(),
                real(f.value()),
                real(f.low()),
                real(f.high()),
                f.unit(),
                real(f.limit()),
                real(f.limitHigh()),
                f.comparison(),
                Result.of(f.result()),
                f.source(),
                f.said());
    }

    private static Double real(java.math.BigDecimal number) {
        return number == null ? null : number.doubleValue();
    }
}
