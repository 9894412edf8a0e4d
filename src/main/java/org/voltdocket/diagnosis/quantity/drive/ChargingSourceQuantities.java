package org.voltdocket.diagnosis.quantity.drive;

import java.util.Optional;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.quantity.RestVoltage;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/** What the charging source does in a drive: does it lift, hold and carry, and does it charge a battery that is low. */
final class ChargingSourceQuantities {

    private final DriveContext notes;

    private ChargingSourceQuantities(DriveContext notes) {
        this.notes = notes;
    }

    static void measure(DriveContext notes) {
        new ChargingSourceQuantities(notes).source();
    }

    private void source() {
        double[] v = notes.drive.steadyOnly(notes.drive.voltage());
        double[] tens = DriveSignals.blocks(v, 10);
        double highest = Robust.quantile(tens, 1);
        if (Double.isNaN(highest)) {
            return; // sampled so thinly that no ten seconds tell a voltage
        }
        notes.say("highest-charging-voltage", Interval.ofStandardError(highest, 0.02));
        notes.say("over-voltage-share", Interval.exact(StepSelection.share(v, x -> x > overVoltage())));
        double[] moving = StepSelection.movingOnly(notes.drive, v);
        notes.say("low-running-voltage-share", Interval.exact(StepSelection.share(moving, x -> x < lowRunning())));
        boolean lifts = highest >= DriveContext.LIFTED_V;
        if (!mayRest()) {
            notes.say(lifts ? "unsupported-yet-lifted" : "unsupported-share", Interval.exact(unsupported(moving)));
        }
        double charging = flowShare(moving, Regime.CHARGING);
        notes.socSeen.filter(soc -> soc.value() < RestVoltage.LOW_CHARGE).ifPresent(soc -> {
            meanRunningCurrent().ifPresent(mean -> notes.say("charging-when-low", mean));
            notes.say("charging-share-when-low", Interval.exact(charging));
            notes.say("holding-share-when-low", Interval.exact(flowShare(moving, Regime.HOLDING)));
            notes.say("lift-when-low", Interval.ofStandardError(highest, 0.02));
        });
        if (lifts && notes.startedLow()) {
            notes.say("failing-at-times", Interval.exact(Math.min(charging, unsupported(moving))));
        }
        notes.firstReportedSoc()
                .filter(soc -> soc < RestVoltage.LOW_CHARGE)
                .ifPresent(soc -> notes.say(
                        "answer-to-reported-need",
                        Interval.exact(
                                Math.max(charging, StepSelection.share(moving, x -> x >= DriveContext.LIFTED_V)))));
    }

    /** A managed source may leave a battery with charge to spare alone; no other may, and none a low one. */
    private boolean mayRest() {
        boolean conventional = notes.reference.facts().vehicle().chargingControl() == ChargingControl.CONVENTIONAL;
        return !conventional && !notes.startedLow();
    }

    private double overVoltage() {
        return 15.05 - 0.008 * (notes.drive.temperatureC() - 20);
    }

    private double lowRunning() {
        return 13.0 - 0.003 * (notes.drive.temperatureC() - 20);
    }

    private double unsupported(double[] v) {
        double rest = notes.restV.map(Interval::value).orElse(12.3);
        double heavy = -8 * notes.reference.size();
        double[] current = notes.flow.current();
        int n = 0;
        int hit = 0;
        for (int k = 0; k < v.length; k++) {
            if (Double.isNaN(v[k])) {
                continue;
            }
            n++;
            boolean known = current != null && !Double.isNaN(current[k]);
            hit += (known ? current[k] < heavy : v[k] < rest - 0.15) ? 1 : 0;
        }
        return n == 0 ? 0 : 100.0 * hit / n;
    }

    private Optional<Interval> meanRunningCurrent() {
        if (notes.flow.current() == null) {
            return Optional.empty();
        }
        double[] blocks = DriveSignals.blocks(notes.drive.steadyOnly(notes.flow.current()), DriveContext.BLOCK_STEPS);
        double mean = Robust.mean(blocks);
        return Double.isNaN(mean)
                ? Optional.empty()
                : Optional.of(Interval.ofStandardError(mean, notes.flow.currentSe()));
    }

    /** Share of the steps with a value that lie in a regime, %. */
    private double flowShare(double[] v, Regime regime) {
        int n = 0;
        int hit = 0;
        for (int k = 0; k < v.length; k++) {
            if (!Double.isNaN(v[k])) {
                n++;
                hit += notes.flow.regimes()[k] == regime ? 1 : 0;
            }
        }
        return n == 0 ? 0 : 100.0 * hit / n;
    }
}
