package org.voltdocket.insight.estimate;

import org.hipparchus.distribution.discrete.BinomialDistribution;

/**
 * Limits of a funnel plot: how far the share of a small group may lie from the share of all by chance alone.
 *
 * <p>Exact binomial limits: a group beyond a limit would lie there by chance with at most half of what the limit leaves out
 * (D. J. Spiegelhalter, 2005, Funnel plots for comparing institutional performance, Statistics in Medicine 24, 1185-1202; his
 * interpolation between two counts is left out, as it would mark three of four as unusual where the target is 30 %).
 *
 * @param target share of all groups together, 0 to 1
 */
public record Funnel(double target) {

    /** Warning limit: by chance at most one group in 20 is outside. */
    public static final double WARNING = 0.95;

    /** Action limit: by chance at most one group in 500 is outside. */
    public static final double ALARM = 0.998;

    /** The position of a group. */
    public enum Place {
        INSIDE,
        LOW,
        HIGH,
        FAR_LOW,
        FAR_HIGH
    }

    public Funnel {
        if (!(target >= 0 && target <= 1)) {
            throw new IllegalArgumentException("a target from 0 to 1, not " + target);
        }
    }

    /** Lower limit, 0 to 1, for a group of {@code size} (at least 1) that holds the given share of groups. */
    public double low(int size, double held) {
        return limit(size, (1 - held) / 2);
    }

    /** Upper limit, 0 to 1, for a group of {@code size} (at least 1) that holds the given share of groups. */
    public double high(int size, double held) {
        return limit(size, (1 + held) / 2);
    }

    /** The position of a group with a known share. */
    public Place place(Proportion group) {
        int size = Math.toIntExact(group.of());
        double share = group.interval().value();
        if (share > high(size, ALARM)) {
            return Place.FAR_HIGH;
        }
        if (share < low(size, ALARM)) {
            return Place.FAR_LOW;
        }
        if (share > high(size, WARNING)) {
            return Place.HIGH;
        }
        return share < low(size, WARNING) ? Place.LOW : Place.INSIDE;
    }

    private double limit(int size, double p) {
        if (size < 1) {
            throw new IllegalArgumentException("a group of at least one, not " + size);
        }
        if (target == 0 || target == 1) {
            return target;
        }
        int count = new BinomialDistribution(size, target).inverseCumulativeProbability(p);
        return (double) count / size;
    }
}
