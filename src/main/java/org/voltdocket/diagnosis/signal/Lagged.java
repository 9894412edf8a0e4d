package org.voltdocket.diagnosis.signal;

/**
 * Correlation of two series about zero at one lag after another. Pairs with a NaN are left out.
 *
 * <p>The sums of a lag are added in the order of time, so that each comes out to the last digit as if it were taken alone. Where
 * neither series has a hole, four lags go side by side, since an addition waits for the one before it.
 */
final class Lagged {

    private static final int TOGETHER = 4;

    private final double[] x;
    private final double[] y;
    private final int end;

    private Lagged(double[] x, double[] y) {
        this.x = x;
        this.y = y;
        this.end = x.length;
    }

    /**
     * @param from first lag, steps, 0 or more; at a positive one {@code y} tells later what {@code x} tells
     * @param to last lag, steps
     * @return a correlation for each lag, -1 to 1; 0 where one of the two is zero throughout
     */
    static double[] correlations(double[] x, double[] y, int from, int to) {
        Lagged lagged = new Lagged(x, y);
        int xFrom = first(x);
        int yFrom = first(y);
        int xTo = behindLast(x);
        int yTo = behindLast(y);
        boolean whole = free(x, xFrom, xTo) && free(y, yFrom, yTo);
        double[] out = new double[to - from + 1];
        int lag = from;
        for (; whole && lag + TOGETHER - 1 <= to; lag += TOGETHER) {
            int last = lag + TOGETHER - 1;
            int common = Math.max(xFrom, yFrom - lag);
            lagged.four(lag, common, Math.max(common, Math.min(xTo, yTo - last)), out, lag - from);
        }
        for (; lag <= to; lag++) {
            out[lag - from] = new Sums().add(x, y, lag, 0, x.length).correlation();
        }
        return out;
    }

    /** @param from in {@code [from, to)} all four have both values */
    private void four(int lag, int from, int to, double[] out, int at) {
        Sums[] sums = new Sums[TOGETHER];
        for (int l = 0; l < TOGETHER; l++) {
            sums[l] = new Sums().add(x, y, lag + l, 0, from);
        }
        abreast(lag, from, to, sums);
        for (int l = 0; l < TOGETHER; l++) {
            out[at + l] = sums[l].add(x, y, lag + l, to, end).correlation();
        }
    }

    private void abreast(int lag, int from, int to, Sums[] sums) {
        Sums s0 = sums[0];
        Sums s1 = sums[1];
        Sums s2 = sums[2];
        Sums s3 = sums[3];
        double xx0 = s0.xx, yy0 = s0.yy, xy0 = s0.xy;
        double xx1 = s1.xx, yy1 = s1.yy, xy1 = s1.xy;
        double xx2 = s2.xx, yy2 = s2.yy, xy2 = s2.xy;
        double xx3 = s3.xx, yy3 = s3.yy, xy3 = s3.xy;
        for (int i = from; i < to; i++) {
            double a = x[i];
            double aa = a * a;
            double b0 = y[i + lag];
            double b1 = y[i + lag + 1];
            double b2 = y[i + lag + 2];
            double b3 = y[i + lag + 3];
            xx0 += aa;
            xx1 += aa;
            xx2 += aa;
            xx3 += aa;
            yy0 += b0 * b0;
            yy1 += b1 * b1;
            yy2 += b2 * b2;
            yy3 += b3 * b3;
            xy0 += a * b0;
            xy1 += a * b1;
            xy2 += a * b2;
            xy3 += a * b3;
        }
        s0.set(xx0, yy0, xy0);
        s1.set(xx1, yy1, xy1);
        s2.set(xx2, yy2, xy2);
        s3.set(xx3, yy3, xy3);
    }

    private static int first(double[] values) {
        int i = 0;
        while (i < values.length && Double.isNaN(values[i])) {
            i++;
        }
        return i;
    }

    private static int behindLast(double[] values) {
        int i = values.length;
        while (i > 0 && Double.isNaN(values[i - 1])) {
            i--;
        }
        return i;
    }

    private static boolean free(double[] values, int from, int to) {
        for (int i = from; i < to; i++) {
            if (Double.isNaN(values[i])) {
                return false;
            }
        }
        return true;
    }

    /** What a lag's correlation is made of. */
    private static final class Sums {

        private double xx;
        private double yy;
        private double xy;

        /** Adds the pairs of {@code x[from..to)} that both have. */
        Sums add(double[] x, double[] y, int lag, int from, int to) {
            for (int i = from; i < to && i + lag < y.length; i++) {
                double a = x[i];
                double b = y[i + lag];
                if (!Double.isNaN(a) && !Double.isNaN(b)) {
                    xx += a * a;
                    yy += b * b;
                    xy += a * b;
                }
            }
            return this;
        }

        void set(double xx, double yy, double xy) {
            this.xx = xx;
            this.yy = yy;
            this.xy = xy;
        }

        double correlation() {
            return xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : 0;
        }
    }
}
