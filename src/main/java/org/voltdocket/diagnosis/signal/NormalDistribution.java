package org.voltdocket.diagnosis.signal;

import org.hipparchus.special.Erf;
import org.voltdocket.kernel.Interval;

/** The normal distribution. */
public final class NormalDistribution {

    private NormalDistribution() {}

    /** Cumulative probability at a number of standard deviations. */
    public static double cumulative(double z) {
        return 0.5 * Erf.erfc(-z / Math.sqrt(2));
    }

    /**
     * Probability that the true value lies below a limit, for a normal error whose standard deviation follows on each side from
     * that end of the 95 % interval.
     */
    public static double chanceBelow(Interval value, double limit) {
        double reach = limit < value.value() ? value.value() - value.low() : value.high() - value.value();
        if (reach == 0) {
            return limit > value.value() ? 1 : 0;
        }
        return cumulative(Interval.Z95 * (limit - value.value()) / reach);
    }
}
