package org.voltdocket.diagnosis.quantity.drive;

import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/**
 * Whether control acts as it should on what its own sensor says. With an honest sensor and a battery that is low, charging
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
    static void measure(DriveContext notes, Interval offset) {
        if (!notes.startedLow()) {
            return;
        }
        double[] moving = StepSelection.movingOnly(notes.drive, notes.drive.steadyOnly(notes.drive.voltage()));
        if (Robust.count(moving) < DriveContext.FEWEST_STEADY_STEPS / 2) {
            return;
        }
        int n = 0;
        int idle = 0;
        for (int k = 0; k < moving.length; k++) {
            if (!Double.isNaN(moving[k])) {
                n++;
                boolean charges = notes.flow.regimes()[k] == Regime.CHARGING || moving[k] >= DriveContext.LIFTED_V;
                idle += charges ? 0 : 1;
            }
        }
        double uncharged = 100.0 * idle / n;
        Double claimed = notes.firstReportedSoc().orElse(null);
        boolean honestCurrent = offset != null && offset.low() > -HONEST_A && offset.high() < HONEST_A;
        boolean honestCharge = claimed == null
                || Math.abs(claimed - notes.socSeen.orElseThrow().value()) < HONEST_POINTS;
        if (honestCurrent && honestCharge) {
            notes.say("uncharged-though-told", Interval.exact(uncharged));
        }
        if (claimed != null && claimed >= MAY_REST) {
            notes.say("rests-as-claimed-full", Interval.exact(uncharged));
        }
    }
}
