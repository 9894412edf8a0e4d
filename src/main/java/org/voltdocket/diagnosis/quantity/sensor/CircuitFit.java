package org.voltdocket.diagnosis.quantity.sensor;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * Nonlinear least squares of a {@link BatteryCircuit}: Gauss–Newton with step halving on residuals freed of their first-order
 * correlation (Prais and Winsten, 1954, with the gaps' own lengths), Huber's weights, and weak starting values.
 *
 * <p>The offset's error is by the sandwich of Newey and West (1987), so that what correlation is left does not narrow it.
 */
final class CircuitFit {

    private static final int ALL = BatteryCircuit.ALL;
    /** Correlation taken off at most: more would leave nothing of what lasts longer than a minute (ours). */
    private static final double MOST_RHO = 0.8;
    /** Least standard deviation of a change that a five second mean may miss, V (ours: model error). */
    private static final double FLOOR_V = 0.006;

    private static final double HUBER_K = 3;
    /** Longest lag, blocks, of the correlation that the covariance allows for. */
    private static final int LAGS = 12;
    /** Longest step along the offset, A, and along a logarithm. */
    private static final double STEP_A = 2;

    private static final double STEP_LOG = 0.7;
    private static final double SETTLED_A = 0.01;
    private static final int HALVINGS = 5;

    private final BatteryCircuit circuit;
    private double[] at;
    private double rho;
    /** By row, the share of the residual before that is expected of it, and the spread of what is its own. */
    private final double[] kept;

    private final double[] own;
    private double sigma = 0.02;
    private double cost;
    private final double[][] normal = new double[ALL][ALL];
    private final double[] pull = new double[ALL];
    private final double[] white = new double[ALL];

    /**
     * @param startA offset to start from, A
     */
    CircuitFit(BatteryCircuit circuit, double startA) {
        this.circuit = circuit;
        this.at = circuit.start.clone();
        this.at[BatteryCircuit.OFFSET] = startA;
        this.kept = new double[circuit.used.length];
        this.own = new double[circuit.used.length];
        correlate(0.8);
        settle(3);
        noise();
        settle(3);
        noise();
        settle(10);
        circuit.run(at, true);
        gather();
    }

    /** The parameters found. */
    double[] at() {
        return at;
    }

    private void settle(int most) {
        cost = cost(at);
        double moved = STEP_A;
        for (int round = 0; round < most && moved > SETTLED_A; round++) {
            moved = step();
        }
    }

    /** One Gauss–Newton step, shortened until it lowers the cost; how far the offset went, A. */
    private double step() {
        circuit.run(at, true);
        gather();
        double[] by =
                inverse().getSolver().solve(new ArrayRealVector(pull, false)).toArray();
        double share = Math.min(1, STEP_A / Math.max(1e-9, Math.abs(by[BatteryCircuit.OFFSET])));
        for (int p = 1; p < BatteryCircuit.SLOPE; p++) {
            share = Math.min(share, STEP_LOG / Math.max(1e-9, Math.abs(by[p])));
        }
        for (int halving = 0; halving < HALVINGS; halving++) {
            double[] next = at.clone();
            for (int p = 0; p < ALL; p++) {
                next[p] += share * by[p];
            }
            double lower = cost(next);
            if (lower <= cost) {
                cost = lower;
                at = next;
                return Math.abs(share * by[BatteryCircuit.OFFSET]);
            }
            share /= 3;
        }
        return 0;
    }

    private CholeskyDecomposition inverse() {
        return new CholeskyDecomposition(new Array2DRowRealMatrix(normal, true), 1e-9, 1e-14);
    }

    /** Takes another correlation, and once for all rows the powers of it that every step of the fit needs. */
    private void correlate(double correlation) {
        rho = correlation;
        for (int row = 0; row < kept.length; row++) {
            int gap = row == 0 ? 0 : circuit.used[row] - circuit.used[row - 1];
            kept[row] = gap == 0 ? 0 : gap == 1 ? rho : StrictMath.pow(rho, gap);
            own[row] = Math.sqrt(1 - kept[row] * kept[row]);
        }
    }

    private double whitened(int row) {
        double before = row == 0 ? 0 : circuit.left[row - 1];
        return (circuit.left[row] - kept[row] * before) / own[row];
    }

    private void whitenSlopes(int row) {
        double by = 1 / own[row];
        int here = row * ALL;
        int before = row == 0 ? here : here - ALL;
        for (int p = 0; p < ALL; p++) {
            white[p] = (circuit.slopes[here + p] - kept[row] * circuit.slopes[before + p]) * by;
        }
    }

    private double weight(double residual) {
        double u = Math.abs(residual) / sigma;
        return u <= HUBER_K ? 1 : HUBER_K / u;
    }

    private double cost(double[] parameters) {
        circuit.run(parameters, false);
        double sum = 0;
        for (int row = 0; row < circuit.used.length; row++) {
            double u = Math.abs(whitened(row)) / sigma;
            sum += u <= HUBER_K ? u * u : 2 * HUBER_K * u - HUBER_K * HUBER_K;
        }
        for (int p = 0; p < ALL; p++) {
            double z = (circuit.start[p] - parameters[p]) / circuit.spread[p];
            sum += z * z;
        }
        return sum;
    }

    /** Normal equations at the present parameters. */
    private void gather() {
        for (double[] line : normal) {
            Arrays.fill(line, 0);
        }
        Arrays.fill(pull, 0);
        double variance = sigma * sigma;
        for (int row = 0; row < circuit.used.length; row++) {
            whitenSlopes(row);
            double residual = whitened(row);
            double weight = weight(residual) / variance;
            for (int p = 0; p < ALL; p++) {
                double of = weight * white[p];
                pull[p] += of * residual;
                for (int q = 0; q <= p; q++) {
                    normal[p][q] += of * white[q];
                }
            }
        }
        for (int p = 0; p < ALL; p++) {
            double trust = 1 / (circuit.spread[p] * circuit.spread[p]);
            normal[p][p] += trust;
            pull[p] += trust * (circuit.start[p] - at[p]);
            for (int q = 0; q < p; q++) {
                normal[q][p] = normal[p][q];
            }
        }
    }

    /** Correlation and size of the residuals at the present parameters. */
    private void noise() {
        circuit.run(at, false);
        double clip = 4 * Math.max(Robust.sd(circuit.left), 0.002);
        double product = 0;
        double square = 0;
        for (int row = 1; row < circuit.used.length; row++) {
            if (circuit.used[row] - circuit.used[row - 1] == 1) {
                double before = Math.max(-clip, Math.min(clip, circuit.left[row - 1]));
                product += before * Math.max(-clip, Math.min(clip, circuit.left[row]));
                square += before * before;
            }
        }
        correlate(square > 0 ? Math.max(0, Math.min(MOST_RHO, product / square)) : 0);
        double[] residuals = new double[circuit.used.length];
        Arrays.setAll(residuals, this::whitened);
        sigma = Math.max(FLOOR_V / Math.sqrt(1 - rho * rho), Robust.sd(residuals));
    }

    /**
     * Standard error of the offset, A: the wider of the sandwich and of the bound, for the sandwich of few blocks is
     * narrow. Each score is taken through the row of the inverse that leads to the offset, so that one sum does.
     */
    double offsetSe() {
        double[] row = inverse().getSolver().getInverse().getRow(BatteryCircuit.OFFSET);
        double[] influence = new double[circuit.used.length];
        double sandwich = 0;
        for (int at = 0; at < influence.length; at++) {
            whitenSlopes(at);
            double residual = whitened(at);
            double by = weight(residual) * residual / (sigma * sigma);
            for (int p = 0; p < ALL; p++) {
                influence[at] += row[p] * by * white[p];
            }
            sandwich += influence[at] * influence[at];
            for (int lag = 1; lag <= Math.min(LAGS, at); lag++) {
                sandwich += 2 * (1 - lag / (LAGS + 1.0)) * influence[at] * influence[at - lag];
            }
        }
        for (int p = 0; p < ALL; p++) {
            sandwich += row[p] * row[p] / (circuit.spread[p] * circuit.spread[p]);
        }
        return Math.sqrt(Math.max(sandwich, row[BatteryCircuit.OFFSET]));
    }

    /**
     * Standard error of the offset, A, by the information alone, as if the circuit were true and no correlation left: the
     * Cramér–Rao bound.
     *
     * @param started whether the starting values count as information (van Trees)
     */
    double boundSe(boolean started) {
        double[][] scaled = new double[ALL][ALL];
        for (int p = 0; p < ALL; p++) {
            for (int q = 0; q < ALL; q++) {
                scaled[p][q] = normal[p][q] * circuit.spread[p] * circuit.spread[q] - (p == q && !started ? 1 : 0);
            }
        }
        RealMatrix inverse = new SingularValueDecomposition(new Array2DRowRealMatrix(scaled, false))
                .getSolver()
                .getInverse();
        return circuit.spread[BatteryCircuit.OFFSET]
                * Math.sqrt(Math.max(0, inverse.getEntry(BatteryCircuit.OFFSET, BatteryCircuit.OFFSET)));
    }
}
