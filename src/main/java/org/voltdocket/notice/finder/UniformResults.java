package org.voltdocket.notice.finder;

import java.util.Optional;

/**
 * Tests whether it is plausible that all results of a workshop are the same although those of other workshops differ.
 *
 * <p>The null hypothesis is that each assessed case of the workshop is a Bernoulli trial with the proportion of failed batteries
 * of all other workshops. The p-value is one-sided: (1 − p)^n that none of n fails, p^n that all fail. Because p is estimated, the
 * end of its 95 % confidence interval (score interval of Wilson 1927) that gives the larger p-value is used. Several workshops
 * are tested, each on both sides; therefore the significance level {@value #LEVEL} is divided by twice their number (Bonferroni
 * correction). Level and smallest sample sizes are a choice of this project.
 */
public final class UniformResults {

    /** Smallest number of assessed cases of the workshop. */
    static final int MIN_OWN = 20;

    /** Smallest number of assessed cases of all other workshops. */
    static final int MIN_OTHERS = 100;

    /** Family-wise significance level: the probability of any notice on a server where the null hypothesis holds everywhere. */
    static final double LEVEL = 0.01;

    /** The 97.5 % quantile of the standard normal distribution. */
    private static final double Z = 1.959963984540054;

    private UniformResults() {}

    /**
     * A significant result.
     *
     * @param neverFails whether none of the workshop's batteries failed; otherwise all failed
     * @param othersShare proportion of failed batteries of all other workshops, 0 to 1
     * @param pValue before the correction for the number of workshops
     */
    record Result(boolean neverFails, double othersShare, double pValue) {}

    /**
     * @param n assessed cases of the workshop, of which {@code k} have a failed battery
     * @param others assessed cases of all other workshops, of which {@code failed} have a failed battery
     * @param workshops number of workshops that are tested
     * @return empty if the results differ, the sample is too small, or the result is not significant
     */
    static Optional<Result> test(int n, int k, int others, int failed, int workshops) {
        if (n < MIN_OWN || others < MIN_OTHERS || k != 0 && k != n) {
            return Optional.empty();
        }
        boolean neverFails = k == 0;
        double share = wilsonBound(failed, others, neverFails ? -1 : 1);
        double pValue = StrictMath.pow(neverFails ? 1 - share : share, n);
        return pValue < LEVEL / (2.0 * Math.max(1, workshops))
                ? Optional.of(new Result(neverFails, (double) failed / others, pValue))
                : Optional.empty();
    }

    /**
     * One end of the 95 % score interval of a proportion.
     *
     * @param side −1 for the lower end, 1 for the upper end
     */
    static double wilsonBound(int k, int n, int side) {
        double p = (double) k / n;
        double z2 = Z * Z / n;
        return (p + z2 / 2 + side * Z * StrictMath.sqrt(p * (1 - p) / n + z2 / (4 * n))) / (1 + z2);
    }
}
