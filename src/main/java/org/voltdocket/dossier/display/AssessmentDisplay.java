package org.voltdocket.dossier.display;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.Estimate;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.evidence.EvidenceItem;

/**
 * An assessment as the page of a case lists it.
 *
 * @param causes most probable first
 * @param findings outside first, then uncertain, then inside by topic
 * @param running whether a step or a missing item has to do with a running engine
 */
public record AssessmentDisplay(
        Assessment assessment, List<CauseRow> causes, FindingsByTopic findings, boolean running) {

    /** A cause with the reasons that moved it. */
    public record CauseRow(String cause, double probability, List<WeightRow> weights) {}

    /**
     * What one finding gave a cause.
     *
     * @param said the sentence of the finding
     * @param known whether the assessment lists the finding
     */
    public record WeightRow(String finding, double decibans, String said, boolean known) {

        private static final double STRONG = 10;
        private static final double MODERATE = 5;
        private static final double NEUTRAL = 0.2;

        /**
         * The strength in words, as a message code: 10 decibans or more are strong, 5 or more moderate (H. Jeffreys, Theory of
         * Probability, appendix B, from memory: powers of the square root of 10).
         */
        public String strength() {
            double size = Math.abs(decibans);
            if (size < NEUTRAL) {
                return "weight.neutral";
            }
            String level = size >= STRONG ? "strong" : size >= MODERATE ? "moderate" : "weak";
            return "weight." + level + (decibans > 0 ? ".for" : ".against");
        }
    }

    /**
     * A finding with the file it is based on.
     *
     * @param file name of the file it rests on; null where it rests on facts or several
     * @param scale null where there is nothing to draw
     */
    public record FindingRow(Finding finding, String file, LimitScale scale) {}

    /** The estimates in their order. */
    public Map<String, Estimate> estimates() {
        return assessment.estimates();
    }

    public static AssessmentDisplay of(Assessment assessment, List<EvidenceItem> items) {
        Map<String, Finding> byId = assessment.findings().stream()
                .collect(Collectors.toMap(Finding::id, f -> f, (a, b) -> a, LinkedHashMap::new));
        List<CauseRow> causes = assessment.causes().stream()
                .map(c -> new CauseRow(
                        c.cause().id(),
                        c.probability(),
                        c.weights().stream()
                                .map(w -> new WeightRow(
                                        w.finding(),
                                        w.decibans(),
                                        said(byId, w.finding()),
                                        byId.containsKey(w.finding())))
                                .toList()))
                .toList();
        boolean running = Stream.concat(assessment.nextSteps().stream(), assessment.missing().stream())
                .anyMatch(s -> s.matches("(?is).*(engine|driv|charging|recording|alternator|running).*"));
        return new AssessmentDisplay(assessment, causes, findings(assessment.findings(), items), running);
    }

    public static FindingsByTopic findings(List<Finding> findings, List<EvidenceItem> items) {
        Map<String, String> files =
                items.stream().collect(Collectors.toMap(i -> i.id().toString(), EvidenceItem::fileName, (a, b) -> a));
        return FindingsByTopic.of(findings.stream()
                .sorted(Comparator.comparingInt(f -> rank(f.result())))
                .map(f -> new FindingRow(
                        f,
                        f.evidence() == null ? null : files.get(f.evidence()),
                        LimitScale.of(f).orElse(null)))
                .toList());
    }

    private static int rank(Result result) {
        return switch (result) {
            case OUTSIDE -> 0;
            case UNCERTAIN -> 1;
            case INSIDE -> 2;
        };
    }

    private static String said(Map<String, Finding> byId, String id) {
        Finding finding = byId.get(id);
        return finding == null ? id : finding.said();
    }
}
