package org.voltdocket.diagnosis.quantity.drive;

import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.signal.Robust;

/** Selects the time steps of a drive that can be compared, and computes shares of them. */
final class StepSelection {

    private static final int CALM_STEPS = 4;
    private static final double CALM_V = 0.06;
    /** Between rows further apart than this the voltage is not known, s. */
    private static final double SLOW_ROW_S = 1.5;
    /** A logger may repeat a polled value over this many rows, with what it bridges. */
    private static final double HELD_ROWS = 3.5;
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

    private static double range(double[] v, int from, int to) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int k = Math.max(0, from); k < Math.min(v.length, to); k++) {
            low = Math.min(low, v[k]);
            high = Math.max(high, v[k]);
        }
        return high - low;
    }

    /** Whether the voltage stays put for seconds, or some rows where those are slow, so that what is left of a delay does not look like a difference. */
    static boolean calm(DriveSignals drive, int step) {
        double[] v = drive.voltage();
        double rowS = drive.grid().rowS();
        if (rowS > SLOW_ROW_S) {
            int around = (int) Math.ceil(HELD_ROWS * rowS / drive.grid().stepS());
            return range(v, step - around - CALM_STEPS, step + around) < CALM_V + drive.resolutionV();
        }
        for (int k = Math.max(1, step - CALM_STEPS); k < Math.min(v.length, step + 2); k++) {
            if (!(Math.abs(v[k] - v[k - 1]) < CALM_V)) {
                return false;
            }
        }
        return true;
    }
}
