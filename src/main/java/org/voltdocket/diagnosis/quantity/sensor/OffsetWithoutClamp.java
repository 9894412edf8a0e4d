package org.voltdocket.diagnosis.quantity.sensor;

import java.util.Optional;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.diagnosis.quantity.RestVoltage;
import org.voltdocket.kernel.Interval;

/**
 * Offset of the vehicle's current sensor without a clamp: by the circuit that fits the measured voltage, by what
 * it reads while the vehicle sleeps, and by both with what cannot be (nothing charges with the engine off, nothing
 * discharges held at charging voltage).
 *
 * <p>The gain is not among it: voltage and reported current leave gain and resistance indistinguishable, and within hours
 * the acid does not even out, so the voltage that moves with the counted charge does not tell it either.
 *
 * @param fit offset by the circuit alone, A
 * @param asleep offset by the reading asleep, A
 * @param together offset by all of it, A
 * @param apart fit less reading asleep, A
 */
public record OffsetWithoutClamp(
        Optional<Interval> fit, Optional<Interval> asleep, Optional<Interval> together, Optional<Interval> apart) {

    /** What the circuit itself may be wrong by, A for 70 Ah, standard error (ours: two batteries of other physics). */
    static final double MODEL_A = 0.55;
    /** A fit vaguer than this says nothing, A. */
    private static final double VAGUE_A = 4;

    private static final double REACH_A = 20;
    private static final double GRID_A = 0.05;
    private static final double UNDER_SLACK_A = 0.1;
    private static final double UNDER_SE_A = 0.2;
    private static final double OVER_SLACK_A = 0.3;
    private static final double OVER_SE_A = 0.5;
    /** A vehicle that falls asleep mostly takes less than this, A, and a drain more: where the pull begins, and its spread. */
    private static final double ASLEEP_SLACK_A = 0.4;

    private static final double ASLEEP_SE_A = 0.6;

    /** Difference of two independent values, each with its own reach to either side. */
    public static Interval apart(Interval fit, Interval asleep) {
        double value = fit.value() - asleep.value();
        return new Interval(
                value,
                value - Math.hypot(fit.value() - fit.low(), asleep.high() - asleep.value()),
                value + Math.hypot(fit.high() - fit.value(), asleep.value() - asleep.low()));
    }

    public static OffsetWithoutClamp of(DriveSignals drive, MeasurementContext reference) {
        Optional<Interval> asleep = SleepingSensorOffset.of(drive);
        Optional<OffsetFitData> blocks =
                OffsetFitData.of(drive, RestVoltage.slope(reference.chemistry(), 60), reference.capacityAh());
        if (blocks.isEmpty()) {
            return new OffsetWithoutClamp(Optional.empty(), asleep, asleep, Optional.empty());
        }
        double least = blocks.get().least();
        double most = blocks.get().most();
        CircuitFit fitted = new CircuitFit(blocks.get().circuit(), middle(least, most));
        double se = Math.hypot(fitted.offsetSe(), MODEL_A * reference.size());
        double value = fitted.at()[BatteryCircuit.OFFSET];
        boolean told = Double.isFinite(value) && se <= VAGUE_A;
        Optional<Interval> fit = told ? Optional.of(Interval.ofStandardError(value, se)) : Optional.empty();
        Optional<Interval> apart = fit.flatMap(f -> asleep.map(a -> apart(f, a)));
        double trusted = told ? se * apart.map(OffsetWithoutClamp::birge).orElse(1.0) : Double.POSITIVE_INFINITY;
        return new OffsetWithoutClamp(fit, asleep, together(value, trusted, asleep, least, most), apart);
    }

    /** By how much the fit is trusted less where the reading asleep contradicts it (Birge's ratio, 1932); at least 1. */
    private static double birge(Interval apart) {
        double reach = apart.value() > 0 ? apart.value() - apart.low() : apart.high() - apart.value();
        return Math.max(1, Interval.Z95 * Math.abs(apart.value()) / reach);
    }

    /** Where the fit starts: between the bounds, or close to the one that is told. */
    private static double middle(double least, double most) {
        if (Double.isNaN(least)) {
            return Double.isNaN(most) ? 0 : Math.min(0, most - 1);
        }
        return Double.isNaN(most) ? least + OVER_SLACK_A : 0.5 * (least + most);
    }

    /** Median and 95 % interval of the offset by all that is known of it; empty where that is nothing. */
    private static Optional<Interval> together(
            double value, double se, Optional<Interval> asleep, double least, double most) {
        boolean held = asleep.isPresent() || !Double.isNaN(least) && !Double.isNaN(most);
        if (Double.isInfinite(se) && !held) {
            return Optional.empty();
        }
        int n = (int) Math.round(2 * REACH_A / GRID_A) + 1;
        double[] strain = new double[n];
        double easiest = Double.POSITIVE_INFINITY;
        for (int j = 0; j < n; j++) {
            double offset = -REACH_A + j * GRID_A;
            double z = Double.isInfinite(se) ? 0 : (offset - value) / se;
            double under = Double.isNaN(least) ? 0 : Math.max(0, least - UNDER_SLACK_A - offset) / UNDER_SE_A;
            double over = Double.isNaN(most) ? 0 : Math.max(0, offset - most - OVER_SLACK_A) / OVER_SE_A;
            double awake = asleep.map(a -> Math.max(0, offset - a.value() - ASLEEP_SLACK_A) / ASLEEP_SE_A)
                    .orElse(0.0);
            strain[j] = z * z + under * under + over * over + awake * awake;
            easiest = Math.min(easiest, strain[j]);
        }
        double sum = 0;
        for (int j = 0; j < n; j++) {
            strain[j] = StrictMath.exp(-0.5 * (strain[j] - easiest));
            sum += strain[j];
        }
        return Optional.of(
                new Interval(quantile(strain, sum, 0.5), quantile(strain, sum, 0.025), quantile(strain, sum, 0.975)));
    }

    private static double quantile(double[] weight, double sum, double p) {
        double reached = 0;
        for (int j = 0; j < weight.length; j++) {
            double share = weight[j] / sum;
            if (reached + share >= p) {
                return -REACH_A + (j - 0.5 + (p - reached) / share) * GRID_A;
            }
            reached += share;
        }
        return REACH_A;
    }
}
