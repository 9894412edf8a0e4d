package org.voltdocket.diagnosis.signal;

/**
 * Correlation about zero of one series with a later one, lag by lag; pairs with a NaN are passed over. Four lags go side by
 * side, so that no sum waits for itself and each value is looked at once for all four; what is missing adds nothing, and
 * each sum still adds in the order of time.
 */
final class LagCorrelation {

    private double xx;
    private double yy;
    private double xy;

    private LagCorrelation() {}

    /**
     * @param x series
     * @param y as long
     * @param lags how many, from 0 on
     * @return by lag, the correlation of {@code x[i]} with {@code y[i + lag]}, -1 to 1; 0 where either is nothing
     */
    static double[] of(double[] x, double[] y, int lags) {
        double[] score = new double[lags];
        for (int lag = 0; lag < lags; lag += 4) {
            four(x, y, lag, score);
        }
        return score;
    }

    private static void four(double[] x, double[] y, int lag, double[] score) {
        LagCorrelation zero = new LagCorrelation();
        LagCorrelation one = new LagCorrelation();
        LagCorrelation two = new LagCorrelation();
        LagCorrelation three = new LagCorrelation();
        double b1 = at(y, lag);
        double b2 = at(y, lag + 1);
        double b3 = at(y, lag + 2);
        for (int i = 0; i < x.length; i++) {
            double a = x[i];
            double b0 = b1;
            b1 = b2;
            b2 = b3;
            b3 = at(y, i + lag + 3);
            if (!Double.isNaN(a)) {
                zero.add(a, b0);
                one.add(a, b1);
                two.add(a, b2);
                three.add(a, b3);
            }
        }
        zero.put(score, lag);
        one.put(score, lag + 1);
        two.put(score, lag + 2);
        three.put(score, lag + 3);
    }

    private static double at(double[] y, int i) {
        return i < y.length ? y[i] : Double.NaN;
    }

    private void add(double a, double b) {
        if (!Double.isNaN(b)) {
            xx += a * a;
            yy += b * b;
            xy += a * b;
        }
    }

    private void put(double[] score, int lag) {
        if (lag < score.length) {
            score[lag] = xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : 0;
        }
    }
}
