package org.voltdocket.diagnosis.quantity;

/**
 * A published table with linear interpolation (our choice), constant beyond its ends.
 *
 * @param x increasing
 * @param y as long as {@code x}
 */
public record LookupTable(double[] x, double[] y) {

    public LookupTable {
        if (x.length != y.length || x.length == 0) {
            throw new IllegalArgumentException("a table has as many values as points, and at least one");
        }
        for (int i = 1; i < x.length; i++) {
            if (!(x[i] > x[i - 1])) {
                throw new IllegalArgumentException("a table's points increase; " + x[i] + " follows " + x[i - 1]);
            }
        }
    }

    /** Value at a point. */
    public double at(double point) {
        int n = x.length;
        if (point <= x[0]) {
            return y[0];
        }
        for (int i = 1; i < n; i++) {
            if (point <= x[i]) {
                return y[i - 1] + (y[i] - y[i - 1]) * (point - x[i - 1]) / (x[i] - x[i - 1]);
            }
        }
        return y[n - 1];
    }

    /** The table read the other way; {@code y} must increase. */
    public LookupTable inverse() {
        return new LookupTable(y, x);
    }
}
