package org.voltdocket.diagnosis.quantity.sensor;

import java.util.Optional;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * Input of the fit of a sensor offset without a clamp: block means of measured voltage and reported current, and the bounds
 * that the offset cannot pass: nothing charges with the engine off, nothing discharges at charging voltage.
 */
public final class OffsetFitData {

    private static final int BLOCK_STEPS = 5;
    /** Above this the battery is driven by the charging source, and no circuit this simple holds, V (ours). */
    private static final double DRIVEN_V = 13.2;

    private static final int FEWEST_BLOCKS = 60;
    /** Held above this for seconds, a battery is being charged, V (common practice). */
    private static final double CHARGED_V = 13.6;

    private static final int FEWEST_STEPS = 15;
    private static final int LASTING_STEPS = 8;
    private static final double FALLING_V = 0.03;
    private static final double BOUND_SLACK_A = 0.3;
    private static final double BOUND_SE_A = 0.5;

    private final double[] volts;
    private final double[] amperes;
    private final double blockS;
    private final double slopeVPerAh;
    private final double scale;
    private final double least;
    private final double most;

    private OffsetFitData(
            double[] volts,
            double[] amperes,
            double blockS,
            double slopeVPerAh,
            double capacityAh,
            double least,
            double most) {
        this.least = least;
        this.most = most;
        this.volts = volts;
        this.amperes = amperes;
        this.blockS = blockS;
        this.slopeVPerAh = slopeVPerAh;
        this.scale = 70 / capacityAh;
    }

    /** The fit before any offset is tried; empty where there is no reported current or too little of it. */
    static Optional<OffsetFitData> of(DriveSignals drive, double slopeVPerPercent, double capacityAh) {
        if (drive.reportedA() == null) {
            return Optional.empty();
        }
        double[] v = drive.voltage().clone();
        double[] i = drive.reportedA().clone();
        for (int k = 0; k < v.length; k++) {
            if (drive.nearStart(k)) {
                v[k] = Double.NaN;
            }
        }
        double[] volts = DriveSignals.blocks(v, BLOCK_STEPS);
        double[] amperes = DriveSignals.blocks(i, BLOCK_STEPS);
        int both = 0;
        for (int b = 0; b < volts.length; b++) {
            both += usable(volts[b]) && !Double.isNaN(amperes[b]) ? 1 : 0;
        }
        if (both < FEWEST_BLOCKS) {
            return Optional.empty();
        }
        double perAh = slopeVPerPercent * 100 / capacityAh;
        double blockS = BLOCK_STEPS * drive.grid().stepS();
        return Optional.of(
                new OffsetFitData(volts, amperes, blockS, perAh, capacityAh, least(drive, i), most(drive, i)));
    }

    private interface Step {
        boolean holds(int step);
    }

    /** With the engine off nothing charges: what is reported then is no more than the offset. */
    private static double least(DriveSignals drive, double[] reported) {
        double[] off = lasting(drive, reported, k -> !drive.running()[k] && !drive.nearStart(k));
        return Robust.count(off) < FEWEST_STEPS ? Double.NaN : Robust.quantile(off, 0.8);
    }

    /** Held at charging voltage a battery takes charge: what is reported then is no less than the offset. */
    private static double most(DriveSignals drive, double[] reported) {
        double[] held = lastingAtCharge(drive, reported);
        return Robust.count(held) < FEWEST_STEPS ? Double.NaN : Robust.quantile(held, 0.2);
    }

    /** The reported current where the voltage is held at charging level, NaN elsewhere. */
    public static double[] lastingAtCharge(DriveSignals drive, double[] reported) {
        return lasting(drive, reported, k -> drive.steady(k) && held(drive.voltage(), k));
    }

    /** At charging voltage and not falling: after a burst of charge the voltage sinks for seconds while the current is off. */
    private static boolean held(double[] v, int step) {
        return v[step] > CHARGED_V && step >= 3 && v[step] >= v[step - 3] - FALLING_V;
    }

    /** The reported current at steps at which something has held for seconds and goes on holding, NaN elsewhere. */
    private static double[] lasting(DriveSignals drive, double[] reported, Step step) {
        double[] kept = reported.clone();
        int n = kept.length;
        int since = 0;
        for (int k = 0; k < n; k++) {
            since = step.holds(k) ? since + 1 : 0;
            boolean goesOn =
                    k + LASTING_STEPS < n && step.holds(k + LASTING_STEPS / 2) && step.holds(k + LASTING_STEPS);
            kept[k] = since > LASTING_STEPS && goesOn ? kept[k] : Double.NaN;
        }
        return kept;
    }

    /** The circuit of {@link CircuitFit} over the same blocks. */
    BatteryCircuit circuit() {
        return new BatteryCircuit(fitted(), amperes, blockS, slopeVPerAh, scale);
    }

    /** What is reported with the engine off, its upper end, A: the offset is no less; NaN where not told. */
    double least() {
        return least;
    }

    /** What is reported while held at charging voltage, its lower end, A: the offset is no more; NaN where not told. */
    double most() {
        return most;
    }

    /** The voltages that the circuit can tell of, NaN elsewhere. */
    private double[] fitted() {
        double[] out = volts.clone();
        for (int b = 0; b < out.length; b++) {
            out[b] = usable(out[b]) ? out[b] : Double.NaN;
        }
        return out;
    }

    private static boolean usable(double volts) {
        return volts < DRIVEN_V;
    }
}
