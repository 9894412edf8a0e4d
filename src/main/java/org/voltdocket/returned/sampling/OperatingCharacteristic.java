package org.voltdocket.returned.sampling;

import org.hipparchus.analysis.solvers.BisectionSolver;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.hipparchus.distribution.discrete.HypergeometricDistribution;

/**
 * How likely a plan accepts (ISO 2859-1, 3.1.30 ff.): of a long series by the binomial distribution, of one lot by the
 * hypergeometric one.
 */
public final class OperatingCharacteristic {

    private OperatingCharacteristic() {}

    /**
     * Of a series of lots.
     *
     * @param nonconforming share of nonconforming ones, 0 to 1
     */
    public static double ofSeries(SamplingPlan plan, double nonconforming) {
        return new BinomialDistribution(plan.sampleSize(), nonconforming).cumulativeProbability(plan.acceptance());
    }

    /**
     * Of this one lot.
     *
     * @param lotSize at least the sample
     * @param nonconforming how many of them, 0 to {@code lotSize}
     */
    public static double ofLot(SamplingPlan plan, int lotSize, int nonconforming) {
        return new HypergeometricDistribution(lotSize, nonconforming, plan.sampleSize())
                .cumulativeProbability(plan.acceptance());
    }

    /** Share of nonconforming ones, 0 to 1, that a series is accepted with at this probability. */
    public static double shareAt(SamplingPlan plan, double probability) {
        if (plan.acceptance() >= plan.sampleSize()) {
            return 1;
        }
        return new BisectionSolver(1e-9).solve(200, p -> ofSeries(plan, p) - probability, 0, 1);
    }
}
