package org.voltdocket.diagnosis.signal;

import java.util.Arrays;

/**
 * Robust straight-line fit for points with outliers and correlated residuals.
 *
 * <p>Huber's M-estimate (k = 1.345) by reweighting; the standard errors are widened for residuals that follow each other
 * by the first-order autoregressive factor √((1+ρ)/(1-ρ)).
 *
 * @param intercept value at x = 0
 * @param slope change of y per x
 * @param interceptSe standard error of the intercept
 * @param slopeSe standard error of the slope
 * @param residualSd robust standard deviation of the residuals
 * @param points points used
 */
public record RobustLine(
        double intercept, double slope, double interceptSe, double slopeSe, double residualSd, int points) {

    private static final double HUBER_K = 1.345;
    private static final int ROUNDS = 25;

    /**
     * Fits y over x; pairs with a NaN are passed over.
     *
     * @return the line, or null where there are fewer than five points or x does not vary
     */
    public static RobustLine through(double[] x, double[] y) {
        double[] px = new double[x.length];
        double[] py = new double[x.length];
        int n = 0;
        for (int i = 0; i < x.length; i++) {
            if (!Double.isNaN(x[i]) && !Double.isNaN(y[i])) {
                px[n] = x[i];
                py[n++] = y[i];
            }
        }
        return n < 5 ? null : fit(Arrays.copyOf(px, n), Arrays.copyOf(py, n));
    }

    private static RobustLine fit(double[] x, double[] y) {
        int n = x.length;
        double[] w = new double[n];
        Arrays.fill(w, 1);
        double a = 0;
        double b = 0;
        double sd = 0;
        double sw = 0;
        double mx = 0;
        double sxx = 0;
        double[] r = new double[n];
        double[] room = new double[n];
        for (int round = 0; round < ROUNDS; round++) {
            sw = 0;
            mx = 0;
            double my = 0;
            for (int i = 0; i < n; i++) {
                sw += w[i];
                mx += w[i] * x[i];
                my += w[i] * y[i];
            }
            mx /= sw;
            my /= sw;
            sxx = 0;
            double sxy = 0;
            for (int i = 0; i < n; i++) {
                sxx += w[i] * (x[i] - mx) * (x[i] - mx);
                sxy += w[i] * (x[i] - mx) * (y[i] - my);
            }
            if (!(sxx > 1e-12 * n)) {
                return null;
            }
            b = sxy / sxx;
            a = my - b * mx;
            for (int i = 0; i < n; i++) {
                r[i] = y[i] - a - b * x[i];
            }
            sd = Math.max(Robust.sd(r, room), 1e-9);
            for (int i = 0; i < n; i++) {
                double u = Math.abs(r[i]) / sd;
                w[i] = u <= HUBER_K ? 1 : HUBER_K / u;
            }
        }
        double widen = Math.sqrt(correlatedFactor(r, sd));
        double slopeSe = sd * widen / Math.sqrt(sxx);
        double interceptSe = sd * widen * Math.sqrt(1 / sw + mx * mx / sxx);
        return new RobustLine(a, b, interceptSe, slopeSe, sd, n);
    }

    /** (1+ρ)/(1-ρ) of the residuals, clipped to four standard deviations; at least 1. */
    public static double correlatedFactor(double[] residuals, double sd) {
        double num = 0;
        double den = 0;
        double before = 0;
        for (int i = 0; i < residuals.length; i++) {
            double now = Math.max(-4 * sd, Math.min(4 * sd, residuals[i]));
            den += now * now;
            num += i == 0 ? 0 : now * before;
            before = now;
        }
        double rho = den > 0 ? Math.max(0, Math.min(0.99, num / den)) : 0;
        return (1 + rho) / (1 - rho);
    }
}
