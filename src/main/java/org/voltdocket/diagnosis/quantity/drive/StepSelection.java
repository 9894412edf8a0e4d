package org.voltdocket.diagnosis.quantity.drive;

import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.signal.Robust;

/** Selects the time steps of a drive that can be compared, and computes shares of them. */
final class StepSelection {

    private static final int CALM_STEPS = 4;
    private static final double CALM_V = 0.06;
    /** Above this the engine turns fast enough for a source to give what it can, km/h (ours). */
    private static final double MOVING_KMH = 20;

    private StepSelection() {}

    interface Test {
        boolean holds(double value);
    }

    /** Share of the values for which the test holds, %; 0 of nothing. */
    static double share(double[] values, Test test) {
        int n = 0;
        int hit = 0;
        for (double v : values) {
            if (!Double.isNaN(v)) {
                n++;
                hit += test.holds(v) ? 1 : 0;
            }
        }
        return n == 0 ? 0 : 100.0 * hit / n;
    }

    /** Without the standstills, at which a sound source may fall short of the loads; all of it where speed is not known. */
    static double[] movingOnly(DriveSignals drive, double[] v) {
        double[] speed = drive.speed();
        if (speed == null) {
            return v;
        }
        double[] out = v.clone();
        for (int k = 0; k < out.length; k++) {
            out[k] = speed[k] > MOVING_KMH ? out[k] : Double.NaN;
        }
        return Robust.count(out) >= DriveContext.FEWEST_STEADY_STEPS / 2 ? out : v;
    }

    /** Whether the voltage stays put for seconds, so that what is left of a delay does not look like a difference. */
    static boolean calm(DriveSignals drive, int step) {
        double[] v = drive.voltage();
        for (int k = Math.max(1, step - CALM_STEPS); k < Math.min(v.length, step + 2); k++) {
            if (!(Math.abs(v[k] - v[k - 1]) < CALM_V)) {
                return false;
            }
        }
        return true;
    }
}
