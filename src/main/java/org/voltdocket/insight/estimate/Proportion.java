package org.voltdocket.insight.estimate;

import org.voltdocket.kernel.Interval;

/**
 * A share: how many of how many.
 *
 * @param count those that have the mark, 0 to {@code of}
 * @param of all that were looked at, not negative
 */
public record Proportion(long count, long of) {

    private static final double Z = Interval.Z95;

    public Proportion {
        if (count < 0 || of < count) {
            throw new IllegalArgumentException("no share: " + count + " of " + of);
        }
    }

    /**
     * The share with its score interval, 0 to 1 (E. B. Wilson, 1927, Journal of the American Statistical Association 22,
     * 209-212).
     *
     * @throws IllegalStateException of nothing; ask {@link #known} first
     */
    public Interval interval() {
        if (!known()) {
            throw new IllegalStateException("a share of nothing");
        }
        double p = (double) count / of;
        double grown = 1 + Z * Z / of;
        double centre = (p + Z * Z / (2.0 * of)) / grown;
        double half = Z / grown * Math.sqrt(p * (1 - p) / of + Z * Z / (4.0 * of * of));
        double low = count == 0 ? 0 : Math.min(p, centre - half);
        double high = count == of ? 1 : Math.max(p, centre + half);
        return new Interval(p, Math.max(0, low), Math.min(1, high));
    }

    /** Whether anything was looked at. */
    public boolean known() {
        return of > 0;
    }

    /** Both together. */
    public Proportion plus(Proportion other) {
        return new Proportion(count + other.count, of + other.of);
    }
}
