package org.voltdocket.diagnosis.quantity.drive;

import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/** Reported against measured voltage: what differs always, what grows with the current, what comes with charging. */
final class GapWhileCharging {

    /** Longer than any delay that is left, steps (ours). */
    private static final int LASTING_STEPS = 8;

    private final DriveContext notes;

    private GapWhileCharging(DriveContext notes) {
        this.notes = notes;
    }

    static void measure(DriveContext notes) {
        if (notes.drive.reportedV() != null) {
            new GapWhileCharging(notes).reportedVoltage();
        }
    }

    private void reportedVoltage() {
        double[] gap = new double[notes.drive.voltage().length];
        for (int k = 0; k < gap.length; k++) {
            gap[k] = notes.drive.steady(k) && StepSelection.calm(notes.drive, k)
                    ? notes.drive.reportedV()[k] - notes.drive.voltage()[k]
                    : Double.NaN;
        }
        gapChange(gap);
    }

    /** How much more the vehicle says than the posts have while charging than it does with the engine off, V. */
    private void gapChange(double[] gap) {
        double[] off = new double[gap.length];
        double[] charging = new double[gap.length];
        for (int k = 0; k < gap.length; k++) {
            boolean stopped =
                    !notes.drive.running()[k] && !notes.drive.nearStart(k) && StepSelection.calm(notes.drive, k);
            off[k] = stopped ? notes.drive.reportedV()[k] - notes.drive.voltage()[k] : Double.NaN;
            charging[k] = claimLasts(k) ? gap[k] : Double.NaN;
        }
        if (Robust.count(off) >= 5 && Robust.count(charging) >= DriveContext.FEWEST_STEADY_STEPS / 2) {
            double change = Robust.median(charging) - Robust.median(off);
            notes.say("gap-while-charging", Interval.ofStandardError(change, 0.03));
        }
    }

    /**
     * Whether the vehicle has claimed charging voltage for seconds and goes on claiming it: picked by the reported value
     * alone, the ends of short bursts would be taken where it is late and the posts have already sunk.
     */
    private boolean claimLasts(int step) {
        double[] reported = notes.drive.reportedV();
        if (step < LASTING_STEPS || step + LASTING_STEPS >= reported.length) {
            return false;
        }
        for (int k = step - LASTING_STEPS; k <= step + LASTING_STEPS; k++) {
            if (!(reported[k] > DriveContext.CHARGE_SEEN_V)) {
                return false;
            }
        }
        return true;
    }
}
