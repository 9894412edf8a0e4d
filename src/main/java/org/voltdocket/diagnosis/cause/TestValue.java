package org.voltdocket.diagnosis.cause;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.DecisionLimit;
import org.voltdocket.diagnosis.rulebook.DiagnosticTest;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/**
 * Expected value of the information of a test (Howard, 1966): how much more often the likeliest cause is the right one once
 * the result is known, times what a wrong repair costs, less the time of the test. Defect and wear have one remedy.
 *
 * @param minutes expected saving of working time; negative where the test costs more than it saves
 * @param outside likeliest cause after a result outside the limits
 * @param inside likeliest cause after a result inside
 */
record TestValue(double minutes, RankedCause outside, RankedCause inside) {

    static TestValue of(Rulebook book, DiagnosticTest test, List<RankedCause> causes) {
        Map<Cause, Double> out = new EnumMap<>(Cause.class);
        Map<Cause, Double> in = new EnumMap<>(Cause.class);
        Map<Cause, Double> now = new EnumMap<>(Cause.class);
        for (RankedCause cause : causes) {
            double p = cause.probability();
            double outside = test.outside(cause.cause());
            out.put(cause.cause(), p * outside);
            in.put(cause.cause(), p * (1 - outside));
            now.put(cause.cause(), p);
        }
        double gain = best(out) + best(in) - best(now);
        double minutes = gain * book.decision(DecisionLimit.WRONG_REPAIR) - test.minutes();
        return new TestValue(minutes, likeliest(out), likeliest(in));
    }

    /** Largest probability of one remedy. */
    private static double best(Map<Cause, Double> joint) {
        double battery = joint.getOrDefault(Cause.BATTERY_DEFECT, 0.0) + joint.getOrDefault(Cause.BATTERY_WORN, 0.0);
        double best = battery;
        for (Map.Entry<Cause, Double> one : joint.entrySet()) {
            best = Math.max(best, one.getValue());
        }
        return best;
    }

    private static RankedCause likeliest(Map<Cause, Double> joint) {
        double sum = 0;
        Cause best = Cause.NONE;
        for (Map.Entry<Cause, Double> one : joint.entrySet()) {
            sum += one.getValue();
            best = one.getValue() > joint.getOrDefault(best, 0.0) ? one.getKey() : best;
        }
        return new RankedCause(best, sum > 0 ? joint.getOrDefault(best, 0.0) / sum : 0, List.of());
    }
}
