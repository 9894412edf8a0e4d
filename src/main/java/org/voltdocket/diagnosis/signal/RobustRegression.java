package org.voltdocket.diagnosis.signal;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.QRDecomposition;

/**
 * Robust multiple linear regression with a constant: Huber's M-estimate (k = 1.345) with reweighting; standard errors widened
 * for residuals that follow each other as in {@link RobustLine}.
 *
 * @param by the constant, then the factor of each
 * @param se standard errors in the same order
 * @param residualSd robust standard deviation of the residuals
 * @param points points used
 */
public record RobustRegression(double[] by, double[] se, double residualSd, int points) {

    private static final double HUBER_K = 1.345;
    private static final int ROUNDS = 20;
    private static final double SINGULAR = 1e-9;
    /** Relative change of a factor from which on another round brings nothing. */
    private static final double SETTLED = 1e-4;

    /**
     * Fits y over the others; rows with a NaN are passed over.
     *
     * @return null where there are fewer than five points for each factor, or the others hardly vary or say the same
     */
    public static RobustRegression of(double[] y, double[]... x) {
        return of(HUBER_K, y, x);
    }

    /** As above with Huber's k; a very large one gives ordinary least squares. */
    static RobustRegression of(double k, double[] y, double[]... x) {
        int[] rows = complete(y, x);
        int terms = x.length + 1;
        if (rows.length < 5 * terms) {
            return null;
        }
        double[] weight = new double[rows.length];
        Arrays.fill(weight, 1);
        double[] by = null;
        double[] left = new double[rows.length];
        double[] room = new double[rows.length];
        double sd = 0;
        DecompositionSolver solver = null;
        for (int round = 0; round < ROUNDS; round++) {
            double[][] normal = new double[terms][terms];
            double[] right = new double[terms];
            double[] row = new double[terms];
            for (int r = 0; r < rows.length; r++) {
                fill(row, rows[r], x);
                for (int a = 0; a < terms; a++) {
                    right[a] += weight[r] * row[a] * y[rows[r]];
                    for (int b = 0; b < terms; b++) {
                        normal[a][b] += weight[r] * row[a] * row[b];
                    }
                }
            }
            solver = new QRDecomposition(new Array2DRowRealMatrix(normal, false), SINGULAR).getSolver();
            if (!solver.isNonSingular()) {
                return null;
            }
            double[] before = by;
            by = solver.solve(new ArrayRealVector(right, false)).toArray();
            for (int r = 0; r < rows.length; r++) {
                fill(row, rows[r], x);
                left[r] = y[rows[r]];
                for (int a = 0; a < terms; a++) {
                    left[r] -= by[a] * row[a];
                }
            }
            sd = Math.max(Robust.sd(left, room), 1e-9);
            for (int r = 0; r < rows.length; r++) {
                double u = Math.abs(left[r]) / sd;
                weight[r] = u <= k ? 1 : k / u;
            }
            if (before != null && settled(before, by)) {
                break;
            }
        }
        double widen = RobustLine.correlatedFactor(left, sd);
        double[] se = new double[terms];
        for (int a = 0; a < terms; a++) {
            se[a] = sd * Math.sqrt(widen * solver.getInverse().getEntry(a, a));
        }
        return new RobustRegression(by, se, sd, rows.length);
    }

    private static boolean settled(double[] before, double[] by) {
        for (int a = 0; a < by.length; a++) {
            if (Math.abs(by[a] - before[a]) > SETTLED * (1e-3 + Math.abs(by[a]))) {
                return false;
            }
        }
        return true;
    }

    private static void fill(double[] row, int at, double[][] x) {
        row[0] = 1;
        for (int a = 0; a < x.length; a++) {
            row[a + 1] = x[a][at];
        }
    }

    private static int[] complete(double[] y, double[][] x) {
        int[] rows = new int[y.length];
        int n = 0;
        for (int i = 0; i < y.length; i++) {
            boolean whole = !Double.isNaN(y[i]);
            for (double[] one : x) {
                whole &= !Double.isNaN(one[i]);
            }
            if (whole) {
                rows[n++] = i;
            }
        }
        return Arrays.copyOf(rows, n);
    }
}
