package org.voltdocket.diagnosis.quantity;

import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealVector;
import org.hipparchus.linear.SingularValueDecomposition;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.signal.Line;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/**
 * The Cramér–Rao bound on the 95 % width of the sensor offset by {@link SensorFit}, at the true offset: the inverse of the
 * Fisher information of the circuit's regression (coefficients and offset together, normal residuals of the variance
 * and first-order correlation that are left at the truth).
 *
 * <p>It bounds an unbiased estimate from this regression. The fit knows more: a pull to usual coefficients and offsets,
 * and what an offset cannot be, engine off or held at charging voltage. Where those decide, its interval may be narrower.
 *
 * @param dataA from the residuals as they are, A
 * @param fitA with the share of the information that the fit keeps and the least residual it takes, A
 * @param pulledA the same with the fit's pulls counted as information (van Trees), A; without what cannot be
 */
public record OffsetBound(double dataA, double fitA, double pulledA) {

    private static final double STEP_A = 0.01;
    private static final double ROOM_C = 20;

    /**
     * @param offsetA what the sensor truly reads too high, A
     * @return empty where the fit has nothing to go by
     */
    public static Optional<OffsetBound> of(Recording recording, Facts facts, double offsetA) {
        Reference reference = new Reference(facts, ROOM_C);
        double slope = RestVoltage.slope(reference.chemistry(), 60);
        return SensorFit.of(new Drive(recording, ROOM_C), slope, reference.capacityAh())
                .map(fit -> at(fit.scan(offsetA - STEP_A, offsetA, offsetA + STEP_A)));
    }

    /**
     * The same of the {@link CircuitFit} that edition 2026.2 goes by: its information at the parameters it finds from the
     * true offset on, alone; with the circuit's own error; with that and the starting values.
     */
    public static Optional<OffsetBound> ofCircuit(Recording recording, Facts facts, double offsetA) {
        Reference reference = new Reference(facts, ROOM_C);
        double slope = RestVoltage.slope(reference.chemistry(), 60);
        double own = SensorWays.MODEL_A * reference.size();
        return SensorFit.of(new Drive(recording, ROOM_C), slope, reference.capacityAh())
                .map(blocks -> new CircuitFit(blocks.circuit(), offsetA))
                .map(fit -> new OffsetBound(
                        2 * Interval.Z95 * fit.boundSe(false),
                        2 * Interval.Z95 * Math.hypot(own, fit.boundSe(false)),
                        2 * Interval.Z95 * Math.hypot(own, fit.boundSe(true))));
    }

    private static OffsetBound at(OffsetScan scan) {
        double[] residuals = SensorFit.compact(scan.residuals(1));
        double[] by = scan.coefficients(1);
        double[][] terms = rows(scan.design(1));
        double[] slope = difference(rows(scan.design(0)), rows(scan.design(2)), by);
        double[] pulls = new double[by.length];
        Arrays.setAll(pulls, scan::pull);
        double sd = Robust.sd(residuals);
        double floor = Math.max(sd, SensorFit.MODEL_SD_V);
        double own = SensorFit.KEPT / Line.correlatedFactor(residuals, floor) / (floor * floor);
        double data = 1 / Line.correlatedFactor(residuals, sd) / (sd * sd);
        double alone = left(terms, slope, new double[by.length]);
        double pulled = own * left(terms, slope, pulls) + 1 / (SensorFit.USUAL_A * SensorFit.USUAL_A);
        return new OffsetBound(width(data * alone), width(own * alone), width(pulled));
    }

    private static double width(double information) {
        return 2 * Interval.Z95 / Math.sqrt(information);
    }

    private static double[][] rows(double[][] design) {
        return Arrays.stream(design).filter(Objects::nonNull).toArray(double[][]::new);
    }

    /** Change of the voltage said per ampere of offset, coefficients held. */
    private static double[] difference(double[][] before, double[][] after, double[] by) {
        double[] out = new double[before.length];
        for (int b = 0; b < out.length; b++) {
            for (int t = 0; t < by.length; t++) {
                out[b] += by[t] * (after[b][t] - before[b][t]) / (2 * STEP_A);
            }
        }
        return out;
    }

    /** Squares of the slope that no choice of coefficients explains away: its information at unit variance. */
    static double left(double[][] terms, double[] slope, double[] pulls) {
        int n = terms.length;
        double[][] design = Arrays.copyOf(terms, n + pulls.length);
        for (int t = 0; t < pulls.length; t++) {
            design[n + t] = new double[pulls.length];
            design[n + t][t] = Math.sqrt(pulls[t]);
        }
        Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(design, false);
        RealVector seen = new ArrayRealVector(Arrays.copyOf(slope, n + pulls.length), false);
        RealVector explained =
                new SingularValueDecomposition(matrix).getSolver().solve(seen);
        double norm = seen.subtract(matrix.operate(explained)).getNorm();
        return norm * norm;
    }
}
