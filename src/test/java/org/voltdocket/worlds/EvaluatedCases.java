package org.voltdocket.worlds;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.worlds.Assessor.Assessed;
import org.voltdocket.worlds.Assessor.Battery;
import org.voltdocket.worlds.WorldEvaluation.Outcome;

/** Assessed cases written by hand, for testing what is counted and fitted. */
final class EvaluatedCases {

    private EvaluatedCases() {}

    static Outcome of(Fault fault, Map<Cause, Double> probabilities, Battery battery, Leaning leaning) {
        Setup setup = Setup.draw(fault, 1, new Chance(1));
        CaseInput nothing = new CaseInput(Facts.UNKNOWN, History.NONE, List.of());
        WorldCase truth =
                new WorldCase("test", fault, 1, setup, nothing, Facts.UNKNOWN, Map.of("sensorOffsetA", List.of(2.0)));
        Cause first = Cause.NONE;
        for (Cause cause : probabilities.keySet()) {
            first = probabilities.get(cause) > probabilities.getOrDefault(first, 0.0) ? cause : first;
        }
        return new Outcome(
                truth,
                Channels.ALL,
                Distinguishability.Kind.CLEAR,
                1,
                new Assessed(
                        first,
                        probabilities.get(first),
                        new EnumMap<>(probabilities),
                        battery,
                        leaning,
                        true,
                        Map.of("sensorOffsetA", new double[] {1.5, 2.5}),
                        null),
                leaning);
    }
}
