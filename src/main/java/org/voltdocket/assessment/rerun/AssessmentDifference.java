package org.voltdocket.assessment.rerun;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.voltdocket.assessment.ReassessmentResult;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.Finding;

/**
 * The differences of two assessments of a case.
 *
 * @param findings ids of the findings that differ, sorted
 * @param rules rows of the rule book these stand for, sorted
 */
public record AssessmentDifference(List<String> findings, List<String> rules) {

    /** Kept numbers have ten digits, those just worked out all they have. */
    private static final double SAME = 1e-8;

    /** Whether the leaning or the first cause is another; so is a first assessment. */
    static boolean counts(ReassessmentResult said) {
        return said.before()
                .map(before -> before.leaning() != said.after().leaning()
                        || before.causes().get(0).cause()
                                != said.after().causes().get(0).cause())
                .orElse(true);
    }

    /** Sets two assessments against each other, finding by finding. */
    public static AssessmentDifference between(Optional<Assessment> before, Assessment after) {
        Map<String, Finding> old = before.map(AssessmentDifference::byId).orElse(Map.of());
        Map<String, Finding> now = byId(after);
        Map<String, Map<String, Double>> oldWeights =
                before.map(AssessmentDifference::weights).orElse(Map.of());
        Map<String, Map<String, Double>> weights = weights(after);
        Set<String> ids = new TreeSet<>(old.keySet());
        ids.addAll(now.keySet());
        List<String> differing = new ArrayList<>();
        Set<String> rules = new LinkedHashSet<>();
        for (String id : ids) {
            if (!same(old.get(id), now.get(id)) || !sameWeights(oldWeights.get(id), weights.get(id))) {
                differing.add(id);
                rules.add((now.containsKey(id) ? now.get(id) : old.get(id)).rule());
            }
        }
        return new AssessmentDifference(
                List.copyOf(differing), rules.stream().sorted().toList());
    }

    private static Map<String, Finding> byId(Assessment assessment) {
        Map<String, Finding> byId = new TreeMap<>();
        assessment.findings().forEach(finding -> byId.put(finding.id(), finding));
        return byId;
    }

    private static Map<String, Map<String, Double>> weights(Assessment assessment) {
        Map<String, Map<String, Double>> byFinding = new HashMap<>();
        assessment
                .causes()
                .forEach(cause -> cause.weights()
                        .forEach(weight -> byFinding
                                .computeIfAbsent(weight.finding(), id -> new TreeMap<>())
                                .put(cause.cause().id(), weight.decibans())));
        return byFinding;
    }

    private static boolean same(Finding a, Finding b) {
        return a != null
                && b != null
                && a.result() == b.result()
                && Objects.equals(a.quantity(), b.quantity())
                && Objects.equals(a.comparison(), b.comparison())
                && close(a.value(), b.value())
                && close(a.low(), b.low())
                && close(a.high(), b.high())
                && close(a.limit(), b.limit())
                && close(a.limitHigh(), b.limitHigh());
    }

    private static boolean sameWeights(Map<String, Double> a, Map<String, Double> b) {
        Map<String, Double> one = a == null ? Map.of() : a;
        Map<String, Double> other = b == null ? Map.of() : b;
        return one.keySet().equals(other.keySet())
                && one.keySet().stream().allMatch(cause -> close(one.get(cause), other.get(cause)));
    }

    private static boolean close(Double a, Double b) {
        if (a == null || b == null) {
            return Objects.equals(a, b);
        }
        return Math.abs(a - b) <= SAME * Math.max(1, Math.max(Math.abs(a), Math.abs(b)));
    }
}
