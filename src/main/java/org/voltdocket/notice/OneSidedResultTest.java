package org.voltdocket.notice;

import java.util.Optional;

/**
 * Whether a workshop's results are all the same although the others' are not, and how likely chance alone would make it so.
 *
 * <p>Each judged case is a draw with the share of failed batteries that all other workshops find (binomial law: none of n
 * fails with (1 − p)^n, all of n fail with p^n). Of the others' share the end of its 95 % interval (Wilson 1927) is taken
 * that makes the workshop look least odd. Several workshops are tested at once, each for both sides: the limit of
 * {@value #LEVEL} is divided by twice their number (Bonferroni). Limits and counts are our choice.
 */
final class OneSidedResultTest {

    /** Least judged cases of the workshop, and of all others. */
    static final int LEAST_OWN = 20;

    static final int LEAST_OTHERS = 100;
    /** Share of servers without any odd workshop that would still show a notice. */
    static final double LEVEL = 0.01;

    private static final double Z = 1.959963984540054;

    private OneSidedResultTest() {}

    /**
     * Results of a workshop that are all alike.
     *
     * @param probability that chance alone makes them so
     */
    record Result(boolean never, double share, double probability) {}

    /**
     * @param n judged cases of the workshop, of which {@code k} have a worn or defective battery
     * @param others judged cases of all other workshops, of which {@code failed} have
     * @param workshops how many workshops are tested at once
     */
    static Optional<Result> judge(int n, int k, int others, int failed, int workshops) {
        if (n < LEAST_OWN || others < LEAST_OTHERS || k != 0 && k != n) {
            return Optional.empty();
        }
        boolean never = k == 0;
        double share = wilson(failed, others, never ? -1 : 1);
        double probability = StrictMath.pow(never ? 1 - share : share, n);
        return probability < LEVEL / (2.0 * Math.max(1, workshops))
                ? Optional.of(new Result(never, (double) failed / others, probability))
                : Optional.empty();
    }

    /** One end of Wilson's 95 % interval of a share. */
    static double wilson(int k, int n, int side) {
        double p = (double) k / n;
        double z2 = Z * Z / n;
        return (p + z2 / 2 + side * Z * StrictMath.sqrt(p * (1 - p) / n + z2 / (4 * n))) / (1 + z2);
    }
}
