package org.voltdocket.diagnosis.signal;

/** Statistics that a few wild values do not move. NaN values are passed over everywhere. */
public final class Robust {

    /** Makes the median absolute deviation an estimate of the standard deviation of a normal distribution. */
    public static final double MAD_TO_SD = 1.482602218505602;

    /** Usual steps of instruments, in any unit. */
    private static final double[] STEPS = {1, 0.5, 0.25, 0.2, 0.1, 0.05, 0.025, 0.02, 0.01, 0.005, 0.0025, 0.002, 0.001
    };
    /** A value this near to a multiple, in steps, is one: float arithmetic. */
    private static final double NEAR = 0.02;

    private Robust() {}

    /** Quantile with linear interpolation (type 7 of Hyndman and Fan, 1996); NaN of nothing. */
    public static double quantile(double[] values, double p) {
        return quantileOfOwn(values.clone(), values.length, p);
    }

    /** As {@link #quantile}, of the first {@code length}; puts the values into another order. */
    static double quantileOfOwn(double[] values, int length, double p) {
        int n = 0;
        for (int i = 0; i < length; i++) {
            if (!Double.isNaN(values[i])) {
                values[n++] = values[i];
            }
        }
        if (n == 0) {
            return Double.NaN;
        }
        double h = (n - 1) * p;
        int lower = (int) Math.floor(h);
        return Selection.between(values, n, lower, h - lower);
    }

    /**
     * What sorting would put at a rank.
     *
     * @param values free of NaN in its first {@code length}, which are put into another order
     * @param rank 0 to length - 1
     */
    public static double ranked(double[] values, int length, int rank) {
        return Selection.of(values, length, rank);
    }

    /** Median; NaN of nothing. */
    public static double median(double[] values) {
        return quantile(values, 0.5);
    }

    /** Median of a channel; NaN of nothing. */
    public static double median(float[] values) {
        int n = 0;
        for (float value : values) {
            n += Float.isNaN(value) ? 0 : 1;
        }
        double[] known = new double[n];
        n = 0;
        for (float value : values) {
            if (!Float.isNaN(value)) {
                known[n++] = value;
            }
        }
        return quantileOfOwn(known, n, 0.5);
    }

    /** Median absolute deviation scaled to a standard deviation; NaN of nothing. */
    public static double sd(double[] values) {
        return sd(values, new double[values.length]);
    }

    /** As {@link #sd(double[])}, with room for as many values at least, which is written over. */
    static double sd(double[] values, double[] room) {
        int n = values.length;
        System.arraycopy(values, 0, room, 0, n);
        double centre = quantileOfOwn(room, n, 0.5);
        for (int i = 0; i < n; i++) {
            room[i] = Math.abs(values[i] - centre);
        }
        return MAD_TO_SD * quantileOfOwn(room, n, 0.5);
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
        return movingMean(values, half, new double[values.length + 1]);
    }

    /** As {@link #movingMean(double[], int)}, with room for one more than the values, which is written over. */
    static double[] movingMean(double[] values, int half, double[] sum) {
        int n = values.length;
        sum[0] = 0;
        for (int i = 0; i < n; i++) {
            sum[i + 1] = sum[i] + (Double.isNaN(values[i]) ? 0 : values[i]);
        }
        double[] out = new double[n];
        int count = 0;
        int counted = 0;
        for (int i = 0; i < n; i++) {
            int from = Math.max(0, i - half);
            int to = Math.min(n, i + half + 1);
            while (counted < to) {
                count += Double.isNaN(values[counted++]) ? 0 : 1;
            }
            if (from > 0) {
                count -= Double.isNaN(values[from - 1]) ? 0 : 1;
            }
            out[i] = Double.isNaN(values[i]) ? Double.NaN : (sum[to] - sum[from]) / count;
        }
        return out;
    }

    /**
     * Resolution of an instrument: the coarsest usual step, in its unit, that all values are multiples of; 0 where they are of none.
     *
     * @param coarsest that is possible; values that never change would be multiples of any
     */
    public static double resolution(float[] values, double coarsest) {
        for (double step : STEPS) {
            if (step <= coarsest && multiples(values, step)) {
                return step;
            }
        }
        return 0;
    }

    private static boolean multiples(float[] values, double step) {
        int most = Math.min(values.length, 4000);
        for (int i = 0; i < most; i++) {
            double share = values[i] / step;
            if (Math.abs(share - Math.rint(share)) > NEAR) {
                return false; // a NaN compares as near
            }
        }
        return true;
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
