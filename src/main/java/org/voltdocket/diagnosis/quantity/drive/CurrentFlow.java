package org.voltdocket.diagnosis.quantity.drive;

import java.util.Optional;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.diagnosis.quantity.RestVoltage;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/**
 * Direction of the battery current while the engine runs: from the clamp where there is one, from the reported current with
 * its offset taken off where that is known, from the measured voltage alone elsewhere.
 */
public final class CurrentFlow {

    /** Less than this either way is "about none", A for a 70 Ah battery (ours). */
    private static final double HOLD_A = 1.25;
    /** Above the rest voltage by this, a battery is being charged, V (ours). */
    private static final double CHARGE_LIFT_V = 0.40;
    /** Below the rest voltage plus this, it supplies, V (ours): a rest voltage carries that much error. */
    private static final double SUPPLY_LIFT_V = -0.03;
    /** An offset known no better than this does not make the reported current true, A. */
    private static final double VAGUE_A = 4;

    private final double[] current;
    private final double currentSe;
    private final Regime[] regimes;

    private CurrentFlow(double[] current, double currentSe, Regime[] regimes) {
        this.current = current;
        this.currentSe = currentSe;
        this.regimes = regimes;
    }

    /**
     * @param offset what the sensor reads too high, A, by clamp or fit; empty where not known
     * @param restV rest voltage before the drive, V; NaN where not known
     */
    public static CurrentFlow of(
            DriveSignals drive, MeasurementContext reference, Optional<Interval> offset, double restV) {
        double[] current = null;
        double se = Double.NaN;
        if (drive.measuredA() != null) {
            current = drive.measuredA();
            se = 0.2;
        } else if (drive.reportedA() != null
                && offset.isPresent()
                && offset.get().standardError() < VAGUE_A / 2) {
            current = drive.reportedA().clone();
            for (int k = 0; k < current.length; k++) {
                current[k] -= offset.get().value();
            }
            se = offset.get().standardError();
        }
        Regime[] regimes = current != null
                ? byCurrent(smooth(current, drive), HOLD_A * reference.size())
                : byVoltage(drive, Double.isNaN(restV) ? RestVoltage.at(reference.chemistry(), 75, 25) : restV);
        return new CurrentFlow(current, se, regimes);
    }

    /** Over five steps, or over three rows where those are longer: what a single row says is no regime. */
    private static double[] smooth(double[] values, DriveSignals drive) {
        int half = (int)
                Math.max(2, Math.round(1.5 * drive.grid().rowS() / drive.grid().stepS() - 0.5));
        return Robust.movingMean(Robust.medianOfThree(values), half);
    }

    private static Regime[] byCurrent(double[] current, double hold) {
        Regime[] out = new Regime[current.length];
        Regime last = Regime.UNKNOWN;
        for (int k = 0; k < out.length; k++) {
            if (!Double.isNaN(current[k])) {
                last = current[k] > hold ? Regime.CHARGING : current[k] < -hold ? Regime.DISCHARGING : Regime.HOLDING;
            }
            out[k] = last;
        }
        return out;
    }

    private static Regime[] byVoltage(DriveSignals drive, double restV) {
        double[] v = smooth(drive.voltage(), drive);
        Regime[] out = new Regime[v.length];
        for (int k = 0; k < out.length; k++) {
            out[k] = Double.isNaN(v[k])
                    ? Regime.UNKNOWN
                    : v[k] > restV + CHARGE_LIFT_V
                            ? Regime.CHARGING
                            : v[k] < restV + SUPPLY_LIFT_V ? Regime.DISCHARGING : Regime.HOLDING;
        }
        return out;
    }

    /** Best knowledge of the true battery current, A, positive into the battery; null where only voltage is there. */
    public double[] current() {
        return current;
    }

    /** Standard error common to all of {@link #current}, A. */
    public double currentSe() {
        return currentSe;
    }

    /** Charging, holding, discharging or unknown by step; only where the engine runs does it mean anything. */
    public Regime[] regimes() {
        return regimes;
    }
}
