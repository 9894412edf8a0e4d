package org.voltdocket.diagnosis.rulebook;

import org.hipparchus.special.Erf;

/** The normal distribution. */
final class NormalDistribution {

    private NormalDistribution() {}

    /** Cumulative probability at a number of standard deviations. */
    static double cumulative(double z) {
        return 0.5 * Erf.erfc(-z / Math.sqrt(2));
    }
}
