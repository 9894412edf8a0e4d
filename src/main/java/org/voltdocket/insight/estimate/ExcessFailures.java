package org.voltdocket.insight.estimate;

import org.hipparchus.distribution.discrete.PoissonDistribution;

/**
 * Whether a group has more failures than its ages let expect: failures seen against the sum of the cumulative hazards that all
 * together have at those ages, as a count of Poisson's (the standardised ratio of cohort studies; Breslow and Day, Statistical
 * Methods in Cancer Research II, 1987, chapter 2).
 */
public final class ExcessFailures {

    private ExcessFailures() {}

    /** Failures to be expected among lives of these ages, 0 or more, if they failed as the fit says. */
    public static double expected(Lifetimes lives, Weibull usual) {
        double sum = 0;
        for (Lifetimes.At at : lives.ages()) {
            sum -= (at.failed() + at.alive()) * Math.log1p(-usual.failedBy(at.age()));
        }
        return sum;
    }

    /**
     * How likely so many or more are by chance alone, 0 to 1.
     *
     * @param expected 0 or more
     */
    public static double chance(long seen, double expected) {
        if (seen <= 0) {
            return 1;
        }
        if (!(expected > 0)) {
            return 0;
        }
        return 1 - new PoissonDistribution(expected).cumulativeProbability((int) Math.min(Integer.MAX_VALUE, seen - 1));
    }
}
