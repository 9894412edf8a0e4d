package org.voltdocket.worlds;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** The only class here that calls the diagnosis: it gives it a case and keeps what the evaluation counts. */
final class Assessor {

    /** What the diagnosis says of the battery. */
    enum Battery {
        SOUND,
        FAILED,
        NOT_JUDGED
    }

    /**
     * An assessment.
     *
     * @param probabilities of all causes
     * @param estimates lower and upper end by name
     * @param findings result by rule; the worst where a rule was met several times
     * @param weights what a rule gave each cause, decibans
     */
    record Assessed(
            Cause first,
            double stated,
            Map<Cause, Double> probabilities,
            Battery battery,
            Leaning leaning,
            Map<String, double[]> estimates,
            Map<String, String> findings,
            Map<String, Map<Cause, Double>> weights,
            Assessment whole) {}

    private final Rulebook rulebook;

    /**
     * @param edition of the rule book; null for the newest that is released
     */
    Assessor(String edition) {
        this.rulebook = edition == null
                ? Editions.all().stream()
                        .filter(Rulebook::released)
                        .reduce((older, newer) -> newer)
                        .orElseThrow()
                : Editions.of(edition);
    }

    String edition() {
        return rulebook.edition();
    }

    Assessed assess(CaseInput input) {
        Assessment said = Diagnosis.assess(asUploaded(input), rulebook);
        Map<Cause, Double> probabilities = new EnumMap<>(Cause.class);
        for (RankedCause one : said.causes()) {
            probabilities.put(one.cause(), one.probability());
        }
        Map<String, double[]> estimates = new TreeMap<>();
        said.estimates().forEach((name, e) -> estimates.put(name, new double[] {e.low(), e.high()}));
        Map<String, String> findings = new TreeMap<>();
        said.findings().stream()
                .filter(f -> f.rule() != null)
                .forEach(f -> findings.merge(f.rule(), side(f), (a, b) -> a.startsWith("inside") ? b : a));
        RankedCause first = said.causes().get(0);
        return new Assessed(
                first.cause(),
                first.probability(),
                probabilities,
                battery(said.batteryVerdict().id()),
                said.leaning(),
                estimates,
                findings,
                weights(said),
                said);
    }

    private static Map<String, Map<Cause, Double>> weights(Assessment said) {
        Map<String, String> rules = new TreeMap<>();
        said.findings().stream().filter(f -> f.rule() != null).forEach(f -> rules.put(f.id(), f.rule()));
        Map<String, Map<Cause, Double>> weights = new TreeMap<>();
        for (RankedCause cause : said.causes()) {
            cause.weights()
                    .forEach(w -> weights.computeIfAbsent(
                                    rules.getOrDefault(w.finding(), w.finding()), r -> new EnumMap<>(Cause.class))
                            .merge(cause.cause(), w.decibans(), Double::sum));
        }
        return weights;
    }

    private static String side(Assessment.Finding finding) {
        boolean sided = finding.value() != null && finding.limitHigh() != null;
        String where = sided && finding.value() < finding.limit() ? " below" : "";
        return finding.result().id() + where;
    }

    /** A server takes the kind of a recording from its content. */
    private static CaseInput asUploaded(CaseInput input) {
        List<Evidence> evidence = input.evidence().stream()
                .map(item -> item.reading() instanceof Recording recording
                        ? new Evidence(
                                item.id(), item.sha256(), item.origin(), recording.as(Diagnosis.kindOf(recording)))
                        : item)
                .toList();
        return new CaseInput(input.facts(), input.history(), evidence);
    }

    private static Battery battery(String verdict) {
        return switch (verdict) {
            case "sound" -> Battery.SOUND;
            case "failed", "worn", "defective" -> Battery.FAILED;
            default -> Battery.NOT_JUDGED;
        };
    }
}
