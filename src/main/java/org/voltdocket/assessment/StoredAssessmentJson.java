package org.voltdocket.assessment;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.voltdocket.assessment.AssessmentView.CauseView;
import org.voltdocket.assessment.AssessmentView.FindingView;
import org.voltdocket.assessment.AssessmentView.RegimeView;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.Result;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.json.JsonMapper;

/** The JSON of stored assessments, with the mapper for texts that are stored or digested. */
final class StoredAssessmentJson {

    /** Members in the order declared, numbers without an exponent. */
    static final JsonMapper JSON = JsonMapper.builder()
            .disable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .changeDefaultPropertyInclusion(all -> all.withValueInclusion(JsonInclude.Include.NON_NULL))
            .build();

    private StoredAssessmentJson() {}

    static String regimes(Assessment assessment) {
        Map<String, List<RegimeView>> byEvidence = new TreeMap<>();
        assessment
                .regimes()
                .forEach((evidence, spans) -> byEvidence.put(
                        evidence, spans.stream().map(RegimeView::of).toList()));
        return JSON.writeValueAsString(byEvidence);
    }

    static Assessment read(String body, String regimes) {
        AssessmentView view = JSON.readValue(body, AssessmentView.class);
        Map<String, List<RegimeView>> spans = JSON.readValue(regimes, new TypeReference<>() {});
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
                view.causes().stream().map(StoredAssessmentJson::cause).toList(),
                view.findings().stream().map(StoredAssessmentJson::finding).toList(),
                estimates,
                byEvidence,
                view.said(),
                view.nextSteps(),
                view.missing());
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
