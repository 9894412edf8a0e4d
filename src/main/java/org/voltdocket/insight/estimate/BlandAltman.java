package org.voltdocket.insight.estimate;

import org.hipparchus.distribution.continuous.TDistribution;
import org.voltdocket.kernel.Interval;

/**
 * How far one instrument reads from another: bias and limits of agreement of the differences, each with its interval (J. M.
 * Bland, D. G. Altman, 1986, Lancet 327, 307-310; variance of the limits s²·(1/n + 1.96²/(2(n - 1))), the same, 1999, Statistical
 * Methods in Medical Research 8, 135-160).
 *
 * @param count pairs
 * @param sd standard deviation of the differences
 * @param bias mean difference
 * @param lower limit below which 2.5 % of the differences lie
 * @param upper limit above which 2.5 % of the differences lie
 */
public record BlandAltman(int count, double sd, Interval bias, Interval lower, Interval upper) {

    /** Fewest pairs for which limits are computed. */
    public static final int LEAST = 3;

    /**
     * @param differences of the pairs, in any unit
     * @throws IllegalArgumentException if there are fewer than {@link #LEAST}
     */
    public static BlandAltman of(double[] differences) {
        int n = differences.length;
        if (n < LEAST) {
            throw new IllegalArgumentException("limits of agreement need " + LEAST + " pairs, not " + n);
        }
        double sum = 0;
        for (double difference : differences) {
            sum += difference;
        }
        double mean = sum / n;
        double squares = 0;
        for (double difference : differences) {
            squares += (difference - mean) * (difference - mean);
        }
        double sd = Math.sqrt(squares / (n - 1));
        double t = new TDistribution(n - 1.0).inverseCumulativeProbability(0.975);
        double z = Interval.Z95;
        double halfBias = t * sd / Math.sqrt(n);
        double halfLimit = t * sd * Math.sqrt(1.0 / n + z * z / (2.0 * (n - 1)));
        return new BlandAltman(
                n, sd, around(mean, halfBias), around(mean - z * sd, halfLimit), around(mean + z * sd, halfLimit));
    }

    /** Whether the bias is significant: its interval excludes zero. */
    public boolean biased() {
        return bias.low() > 0 || bias.high() < 0;
    }

    private static Interval around(double value, double half) {
        return new Interval(value, value - half, value + half);
    }
}
