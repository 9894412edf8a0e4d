package org.voltdocket.worlds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.worlds.Assessor.Battery;
import org.voltdocket.worlds.WorldEvaluation.Outcome;

/** The fit on cases written by hand. */
class WeightFitTest {

    /** Forty cables that a rule sees, and forty healthy vehicles that it does not; the expert leaves both at 60 to 40. */
    private static List<Outcome> cases(double expertDecibans) {
        List<Outcome> cases = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            cases.add(of(Fault.MAIN_CABLE, Map.of("drop", "outside"), expertDecibans));
            cases.add(of(Fault.HEALTHY_OLD, Map.of("drop", "inside"), expertDecibans));
        }
        return cases;
    }

    private static Outcome of(Fault fault, Map<String, String> findings, double decibans) {
        return EvaluatedCases.of(
                fault,
                Map.of(Cause.NONE, 0.6, Cause.WIRING, 0.4),
                Battery.SOUND,
                Leaning.OPEN,
                findings,
                Map.of("drop", Map.of(Cause.WIRING, decibans)));
    }

    private static double wiring(List<Outcome> cases, double penalty) {
        return WeightFit.on(cases, penalty).probabilities(cases.get(0).said())[Cause.WIRING.ordinal()];
    }

    @Test
    void aFindingThatTellsTheCauseGainsWeight() {
        assertThat(wiring(cases(2), 1)).isGreaterThan(0.8);
    }

    @Test
    void aLargePenaltyKeepsTheExpertsWeights() {
        assertThat(wiring(cases(2), 1e6)).isCloseTo(0.4, within(0.001));
    }

    @Test
    void aWeightDoesNotTurnItsSign() {
        // the expert speaks against wiring with 1 deciban = 0.23 nats: wiring gains at most that, none may lose 1.5
        // nats
        double odds = 0.4 / 0.6 * StrictMath.exp(0.2303 + 1.5);
        assertThat(wiring(cases(-1), 0.01)).isLessThanOrEqualTo(odds / (1 + odds) + 1e-3);
        assertThat(wiring(cases(2), 0.01)).isGreaterThan(odds / (1 + odds) + 1e-3);
    }
}
