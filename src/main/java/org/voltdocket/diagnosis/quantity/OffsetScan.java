package org.voltdocket.diagnosis.quantity;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;

/**
 * Least squares of the equivalent circuit of {@link SensorFit} at every offset of a grid at once: block by block with the
 * offsets innermost, so that the sums run over arrays, each in the order of time.
 */
final class OffsetScan {

    private static final double FAST_S = 30;
    private static final double SLOW_S = 600;
    /** Constant, ohmic part, fast lag, slow lag, both lags of charging only, counted charge. */
    private static final int TERMS = 7;
    /** A five second mean that misses by more counts as missing by this, V (ours). */
    private static final double CLIP_V = 0.25;

    private final double[] volts;
    private final double[] amperes;
    private final double[] offsets;
    private final double blockS;
    private final double priorV;
    private final double[] start;
    private final double[] looseness;
    private final double[][] beta;
    private final double[] cost;

    /**
     * @param volts block means, V; NaN where none is to be fitted
     * @param amperes reported current, A; NaN where not told
     * @param offsets offsets to try, A
     * @param blockS length of a block, s
     * @param slopeVPerAh slope of the rest voltage
     * @param scale 70 Ah over the capacity
     * @param priorV standard deviation that the weak starting values are weighed against, V
     */
    OffsetScan(
            double[] volts,
            double[] amperes,
            double[] offsets,
            double blockS,
            double slopeVPerAh,
            double scale,
            double priorV) {
        this.volts = volts;
        this.amperes = amperes;
        this.offsets = offsets;
        this.blockS = blockS;
        this.priorV = priorV;
        this.start = new double[] {
            12.4, 0.006 * scale, 0.004 * scale, 0.004 * scale, 0.010 * scale, 0.015 * scale, slopeVPerAh
        };
        this.looseness = new double[] {
            0.5, 0.003 * scale, 0.004 * scale, 0.006 * scale, 0.015 * scale, 0.02 * scale, 0.3 * slopeVPerAh
        };
        this.beta = solve();
        this.cost = costs();
    }

    /** Clipped sum of squares plus the pull of the starting values, V², by offset. */
    double[] cost() {
        return cost;
    }

    /** What the fit at one offset leaves, V, by block; NaN where nothing was fitted. */
    double[] residuals(int offset) {
        double[] out = new double[volts.length];
        double[][] rows = design(offset);
        double[] by = coefficients(offset);
        for (int b = 0; b < out.length; b++) {
            out[b] = rows[b] == null ? Double.NaN : volts[b] - said(rows[b], by);
        }
        return out;
    }

    private static double said(double[] row, double[] by) {
        double sum = 0;
        for (int t = 0; t < TERMS; t++) {
            sum += by[t] * row[t];
        }
        return sum;
    }

    /** The circuit's terms by block at one offset, null where nothing was fitted: the rows of the regression. */
    double[][] design(int offset) {
        double[][] rows = new double[volts.length][];
        Terms terms = new Terms(Arrays.copyOfRange(offsets, offset, offset + 1));
        for (int b = 0; b < rows.length; b++) {
            if (terms.next(b) && !Double.isNaN(volts[b])) {
                rows[b] = new double[TERMS];
                for (int t = 0; t < TERMS; t++) {
                    rows[b][t] = terms.of[t][0];
                }
            }
        }
        return rows;
    }

    /** Fitted coefficients at one offset, in the order of the terms. */
    double[] coefficients(int offset) {
        double[] out = new double[TERMS];
        for (int t = 0; t < TERMS; t++) {
            out[t] = beta[t][offset];
        }
        return out;
    }

    /** How much a starting value counts, in squares of its term. */
    double pull(int term) {
        return priorV * priorV / (looseness[term] * looseness[term]);
    }

    /** Coefficients by term and offset. */
    private double[][] solve() {
        int n = offsets.length;
        double[][][] normal = new double[TERMS][TERMS][];
        double[][] right = new double[TERMS][n];
        for (int r = 0; r < TERMS; r++) {
            for (int c = 0; c <= r; c++) {
                normal[r][c] = new double[n];
            }
            Arrays.fill(normal[r][r], pull(r));
            Arrays.fill(right[r], pull(r) * start[r]);
        }
        Terms terms = new Terms(offsets);
        for (int b = 0; b < volts.length; b++) {
            if (terms.next(b) && !Double.isNaN(volts[b])) {
                for (int r = 0; r < TERMS; r++) {
                    for (int c = 0; c <= r; c++) {
                        addProduct(normal[r][c], terms.of[r], terms.of[c]);
                    }
                    addMultiple(right[r], terms.of[r], volts[b]);
                }
            }
        }
        double[][] solved = new double[TERMS][n];
        double[][] one = new double[TERMS][TERMS];
        double[] side = new double[TERMS];
        for (int j = 0; j < n; j++) {
            for (int r = 0; r < TERMS; r++) {
                for (int c = 0; c <= r; c++) {
                    one[r][c] = normal[r][c][j];
                    one[c][r] = one[r][c];
                }
                side[r] = right[r][j];
            }
            double[] answer = new CholeskyDecomposition(new Array2DRowRealMatrix(one, false), 1e-9, 1e-14)
                    .getSolver()
                    .solve(new ArrayRealVector(side, false))
                    .toArray();
            for (int t = 0; t < TERMS; t++) {
                solved[t][j] = answer[t];
            }
        }
        return solved;
    }

    private double[] costs() {
        int n = offsets.length;
        double[] sum = new double[n];
        for (int t = 0; t < TERMS; t++) {
            for (int j = 0; j < n; j++) {
                double miss = (beta[t][j] - start[t]) / looseness[t];
                sum[j] += priorV * priorV * miss * miss;
            }
        }
        Terms terms = new Terms(offsets);
        double[] said = new double[n];
        for (int b = 0; b < volts.length; b++) {
            if (terms.next(b) && !Double.isNaN(volts[b])) {
                Arrays.fill(said, 0);
                for (int t = 0; t < TERMS; t++) {
                    addProduct(said, beta[t], terms.of[t]);
                }
                addSquares(sum, volts[b], said);
            }
        }
        return sum;
    }

    private static void addProduct(double[] sum, double[] x, double[] y) {
        for (int j = 0; j < sum.length; j++) {
            sum[j] += x[j] * y[j];
        }
    }

    private static void addMultiple(double[] sum, double[] x, double factor) {
        for (int j = 0; j < sum.length; j++) {
            sum[j] += x[j] * factor;
        }
    }

    private static void addSquares(double[] sum, double seen, double[] said) {
        for (int j = 0; j < sum.length; j++) {
            double e = Math.min(Math.abs(seen - said[j]), CLIP_V);
            sum[j] += e * e;
        }
    }

    /** The circuit's terms of one block after the other, by offset. */
    private final class Terms {
        final double[][] of;
        private final double[] offset;
        private final double keepFast = StrictMath.exp(-blockS / FAST_S);
        private final double keepSlow = StrictMath.exp(-blockS / SLOW_S);
        private boolean heard;

        Terms(double[] offset) {
            this.offset = offset;
            this.of = new double[TERMS][offset.length];
            Arrays.fill(of[0], 1);
        }

        /**
         * Goes on to block {@code b}. A current that is not told is taken for the last one; before the first one is told
         * for none.
         *
         * @return whether the terms of this block are known
         */
        boolean next(int b) {
            boolean told = !Double.isNaN(amperes[b]);
            heard |= told;
            double[] current = of[1];
            if (told) {
                for (int j = 0; j < current.length; j++) {
                    current[j] = amperes[b] - offset[j];
                }
            }
            lag(of[2], current, keepFast);
            lag(of[3], current, keepSlow);
            lagOfCharging(of[4], current, keepFast);
            lagOfCharging(of[5], current, keepSlow);
            for (int j = 0; j < current.length; j++) {
                of[6][j] += current[j] * blockS / 3600;
            }
            return told || !heard;
        }

        private static void lag(double[] state, double[] current, double keep) {
            for (int j = 0; j < state.length; j++) {
                state[j] = keep * state[j] + (1 - keep) * current[j];
            }
        }

        private static void lagOfCharging(double[] state, double[] current, double keep) {
            for (int j = 0; j < state.length; j++) {
                state[j] = keep * state[j] + (1 - keep) * Math.max(current[j], 0);
            }
        }
    }
}
