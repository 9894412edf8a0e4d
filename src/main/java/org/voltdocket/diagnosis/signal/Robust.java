package org.voltdocket.diagnosis.signal;

import java.util.Arrays;

/** Statistics that a few wild values do not move. NaN values are passed over everywhere. */
public final class Robust {

    /** Makes the median absolute deviation an estimate of the standard deviation of a normal distribution. */
    public static final double MAD_TO_SD = 1.482602218505602;

    private Robust() {}

    /** The finite values, sorted; a copy. */
    public static double[] sorted(double[] values) {
        double[] kept = new double[values.length];
        int n = 0;
        for (double v : values) {
            if (!Double.isNaN(v)) {
                kept[n++] = v;
            }
        }
        double[] out = Arrays.copyOf(kept, n);
        Arrays.sort(out);
        return out;
    }

    /** Quantile with linear interpolation (type 7 of Hyndman and Fan, 1996); NaN of nothing. */
    public static double quantile(double[] values, double p) {
        return quantileOfSorted(sorted(values), p);
    }

    /** As {@link #quantile}, of values already sorted and free of NaN. */
    public static double quantileOfSorted(double[] sorted, double p) {
        if (sorted.length == 0) {
            return Double.NaN;
        }
        double h = (sorted.length - 1) * p;
        int lower = (int) Math.floor(h);
        int upper = Math.min(lower + 1, sorted.length - 1);
        return sorted[lower] + (h - lower) * (sorted[upper] - sorted[lower]);
    }

    /** Median; NaN of nothing. */
    public static double median(double[] values) {
        return quantile(values, 0.5);
    }

    /** Median absolute deviation scaled to a standard deviation; NaN of nothing. */
    public static double sd(double[] values) {
        double centre = median(values);
        double[] deviations = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            deviations[i] = Math.abs(values[i] - centre);
        }
        return MAD_TO_SD * median(deviations);
    }

    /** Arithmetic mean; NaN of nothing. */
    public static double mean(double[] values) {
        double sum = 0;
        int n = 0;
        for (double v : values) {
            if (!Double.isNaN(v)) {
                sum += v;
                n++;
            }
        }
        return n == 0 ? Double.NaN : sum / n;
    }

    /** Number of values that are not NaN. */
    public static int count(double[] values) {
        int n = 0;
        for (double v : values) {
            if (!Double.isNaN(v)) {
                n++;
            }
        }
        return n;
    }

    /**
     * Mean of a sliding window centred on each value, {@code half} values on each side; NaN where the value is NaN.
     */
    public static double[] movingMean(double[] values, int half) {
        int n = values.length;
        double[] sum = new double[n + 1];
        int[] count = new int[n + 1];
        for (int i = 0; i < n; i++) {
            boolean there = !Double.isNaN(values[i]);
            sum[i + 1] = sum[i] + (there ? values[i] : 0);
            count[i + 1] = count[i] + (there ? 1 : 0);
        }
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            int from = Math.max(0, i - half);
            int to = Math.min(n, i + half + 1);
            int c = count[to] - count[from];
            out[i] = Double.isNaN(values[i]) || c == 0 ? Double.NaN : (sum[to] - sum[from]) / c;
        }
        return out;
    }

    /** Median of each value and its two neighbours: takes single spikes out. */
    public static double[] medianOfThree(double[] values) {
        double[] out = values.clone();
        for (int i = 1; i + 1 < values.length; i++) {
            double a = values[i - 1];
            double b = values[i];
            double c = values[i + 1];
            if (!Double.isNaN(a) && !Double.isNaN(b) && !Double.isNaN(c)) {
                out[i] = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
            }
        }
        return out;
    }
}
