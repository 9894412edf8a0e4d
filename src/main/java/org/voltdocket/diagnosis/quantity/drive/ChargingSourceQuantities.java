package org.voltdocket.diagnosis.quantity.drive;

import java.util.Arrays;
import java.util.Optional;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.quantity.RestVoltage;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/** What the charging source does in a drive: does it lift, hold and carry, and does it charge a battery that is low. */
final class ChargingSourceQuantities {

    /** With a larger share of the time above the limit a source gives too much, % (ours). */
    private static final double MOSTLY_OVER = 50;
    /** Charging for this long shows a source that worked, s (ours). */
    private static final double CHARGED_S = 60;
    /** Quantile of the voltage after the last charging that must lie below a working source (ours). */
    private static final double SUPPLIES = 0.9;
    /** A working source keeps the posts above this, V (common practice: a battery under load is below). */
    private static final double NO_SOURCE_V = 12.7;
    /** The same where the control may let the source rest, V (ours). */
    private static final double NEVER_RESTS_V = 12.1;

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
        double over = StepSelection.share(v, x -> x > overVoltage());
        notes.say("over-voltage-share", Interval.exact(over));
        notes.say("median-running-voltage", Interval.ofStandardError(Robust.median(tens), 0.02));
        if (over > MOSTLY_OVER) {
            return; // what follows asks whether the source gives too little
        }
        notes.say("highest-charging-voltage", Interval.ofStandardError(highest, 0.02));
        notes.say("charging-stopped", Interval.exact(stopped(v)));
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

    /**
     * Time at the end of the drive in which the battery supplies the loads without a break, s, after the source had charged
     * for a minute or more; 0 where it charges again, and where the control may let it rest.
     */
    private double stopped(double[] v) {
        double[] smooth = Robust.movingMean(v, 2);
        int last = -1;
        int charging = 0;
        for (int k = 0; k < smooth.length; k++) {
            if (smooth[k] >= DriveContext.LIFTED_V) {
                charging++;
                last = k;
            }
        }
        double step = notes.drive.grid().stepS();
        double[] after = Arrays.copyOfRange(v, last + 1, v.length);
        boolean supplies = Robust.quantile(after, SUPPLIES) < (mayRest() ? NEVER_RESTS_V : NO_SOURCE_V);
        return charging * step >= CHARGED_S && supplies ? Robust.count(after) * step : 0;
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
