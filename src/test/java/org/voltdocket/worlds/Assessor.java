package org.voltdocket.worlds;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.assess.Diagnosis;
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
     * @param tested whether a test shows what the battery delivers of what it was rated for
     * @param estimates lower and upper end by name
     */
    record Assessed(
            Cause first,
            double stated,
            Map<Cause, Double> probabilities,
            Battery battery,
            Leaning leaning,
            boolean tested,
            Map<String, double[]> estimates,
            Assessment whole) {}

    private static final Set<String> TESTS = Set.of("cranking-share", "capacity-share");

    private final Rulebook rulebook;

    Assessor(Rulebook rulebook) {
        this.rulebook = rulebook;
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
        RankedCause first = said.causes().get(0);
        return new Assessed(
                first.cause(),
                first.probability(),
                probabilities,
                battery(said.batteryVerdict().id()),
                said.leaning(),
                said.findings().stream().anyMatch(f -> TESTS.contains(f.rule())),
                estimates,
                said);
    }

    /** A server takes the kind of a recording from its content. */
    static CaseInput asUploaded(CaseInput input) {
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
