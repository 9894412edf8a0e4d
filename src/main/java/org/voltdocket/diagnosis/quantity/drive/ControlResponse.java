package org.voltdocket.diagnosis.quantity.drive;

import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/**
 * Whether the charge control responds correctly to what its own sensor reports. With an honest sensor and a battery that is low, charging
 * must follow: where it does not, control or source are at fault. Where the vehicle takes a low battery for full, resting
 * is what control should do: the sensor is at fault.
 */
final class ControlResponse {

    /** An offset whose interval lies within this is honest, A (ours). */
    private static final double HONEST_A = 1.5;
    /** A reported charge within this of the rest voltage's is honest, points (ours). */
    private static final double HONEST_POINTS = 25;
    /** From here on a control may rest, % (service texts: 80 %, European targets 75 to 85 %). */
    private static final double MAY_REST = 75;

    private ControlResponse() {}

    /**
     * @param offset what the sensor reads too high; null where not known
     */
    static void measure(DriveContext context, Interval offset) {
        double low = context.startedLow();
        if (low == 0) {
            return;
        }
        double[] moving = StepSelection.movingOnly(context.drive, context.drive.steadyOnly(context.drive.voltage()));
        if (Robust.count(moving) < DriveContext.FEWEST_STEADY_STEPS / 2) {
            return;
        }
        int n = 0;
        int idle = 0;
        for (int k = 0; k < moving.length; k++) {
            if (!Double.isNaN(moving[k])) {
                n++;
                boolean charges = context.flow.regimes()[k] == Regime.CHARGING || moving[k] >= DriveContext.LIFTED_V;
                idle += charges ? 0 : 1;
            }
        }
        double uncharged = 100.0 * idle / n;
        Double claimed = context.firstReportedSoc().orElse(null);
        boolean honestCurrent = offset != null && offset.low() > -HONEST_A && offset.high() < HONEST_A;
        boolean honestCharge = claimed == null
                || Math.abs(claimed - context.socSeen.orElseThrow().value()) < HONEST_POINTS;
        if (honestCurrent && honestCharge) {
            context.addGiven(low, "uncharged-though-told", Interval.exact(uncharged));
        }
        if (claimed != null && claimed >= MAY_REST) {
            context.addGiven(low, "rests-as-claimed-full", Interval.exact(uncharged));
        }
    }
}
