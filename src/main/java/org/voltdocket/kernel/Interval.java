package org.voltdocket.kernel;

/**
 * A value with its 95 % interval, all in one unit.
 *
 * @param value best value
 * @param low lower end, not above {@code value}
 * @param high upper end, not below {@code value}
 */
public record Interval(double value, double low, double high) {

    /** Quantile of the normal distribution that leaves 2.5 % on each side. */
    public static final double Z95 = 1.959963984540054;

    public Interval {
        if (!(low <= value && value <= high) || Double.isInfinite(low) || Double.isInfinite(high)) {
            throw new IllegalArgumentException("no interval: " + low + " <= " + value + " <= " + high);
        }
    }

    /** Interval of a normal estimate with the given standard error (not negative). */
    public static Interval ofStandardError(double value, double standardError) {
        return new Interval(value, value - Z95 * standardError, value + Z95 * standardError);
    }

    /** A value known exactly, or whose error is not known. */
    public static Interval exact(double value) {
        return new Interval(value, value, value);
    }

    /** Half the width divided by the normal quantile. */
    public double standardError() {
        return (high - low) / (2 * Z95);
    }
}
