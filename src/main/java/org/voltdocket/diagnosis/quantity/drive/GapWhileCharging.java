package org.voltdocket.diagnosis.quantity.drive;

import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/** Difference of reported and measured voltage while charging, compared with the one with the engine off. */
final class GapWhileCharging {

    /** Longer than any delay that is left, steps (ours). */
    private static final int LASTING_STEPS = 8;

    private final DriveContext context;

    private GapWhileCharging(DriveContext context) {
        this.context = context;
    }

    static void measure(DriveContext context) {
        if (context.drive.reportedV() != null) {
            new GapWhileCharging(context).reportedVoltage();
        }
    }

    private void reportedVoltage() {
        double[] gap = new double[context.drive.voltage().length];
        for (int k = 0; k < gap.length; k++) {
            gap[k] = context.drive.steady(k) && StepSelection.calm(context.drive, k)
                    ? context.drive.reportedV()[k] - context.drive.voltage()[k]
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
                    !context.drive.running()[k] && !context.drive.nearStart(k) && StepSelection.calm(context.drive, k);
            off[k] = stopped ? context.drive.reportedV()[k] - context.drive.voltage()[k] : Double.NaN;
            charging[k] = claimLasts(k) ? gap[k] : Double.NaN;
        }
        if (Robust.count(off) >= 5 && Robust.count(charging) >= DriveContext.FEWEST_STEADY_STEPS / 2) {
            double change = Robust.median(charging) - Robust.median(off);
            context.add("gap-while-charging", Interval.ofStandardError(change, 0.03));
        }
    }

    /**
     * Whether the vehicle has claimed charging voltage for seconds and goes on claiming it: picked by the reported value
     * alone, the ends of short bursts would be taken where it is late and the posts have already sunk.
     */
    private boolean claimLasts(int step) {
        double[] reported = context.drive.reportedV();
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
