package org.voltdocket.diagnosis.rulebook;

import java.util.Map;
import org.voltdocket.diagnosis.Cause;

/**
 * A test or recording that a workshop can still make, as the rule book values it.
 *
 * @param minutes working time it costs
 * @param outside probability that its result lies outside the limits, by cause
 * @param otherwise the same for a cause that is not named
 * @param source where the numbers come from
 */
public record DiagnosticTest(double minutes, Map<Cause, Double> outside, double otherwise, String source) {

    /** Probability that the result lies outside its limits if this is the cause. */
    public double outside(Cause cause) {
        return outside.getOrDefault(cause, otherwise);
    }
}
