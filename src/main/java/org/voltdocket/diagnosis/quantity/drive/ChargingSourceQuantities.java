package org.voltdocket.diagnosis.quantity.drive;

import java.util.Arrays;
import java.util.Optional;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/** Quantities of the charging source: voltage, support of the loads, and charging of a low battery. */
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

    /** Targets of managed charging lie between, % (common practice: 75 to 85 %, with what a count may err). */
    private static final double SURELY_LOW = 60;

    private static final double SURELY_ENOUGH = 76;
    /** Probability that a managed source must keep a charged battery from giving 8 A and more (service texts; ours). */
    private static final double MANAGED_SUPPLIES = 0.4;
    /** The same where the kind of control is not known, and the share of conventional sources there (ours). */
    private static final double UNKNOWN_SUPPLIES = 0.7;

    private static final double UNKNOWN_CONVENTIONAL = 0.5;

    private final DriveContext context;

    private ChargingSourceQuantities(DriveContext context) {
        this.context = context;
    }

    static void measure(DriveContext context) {
        new ChargingSourceQuantities(context).source();
    }

    private void source() {
        double[] v = context.drive.steadyOnly(context.drive.voltage());
        double[] tens = DriveSignals.blocks(v, 10);
        double highest = Robust.quantile(tens, 1);
        if (Double.isNaN(highest)) {
            return; // sampled so thinly that no ten seconds tell a voltage
        }
        double over = StepSelection.share(v, x -> x > overVoltage());
        context.add("over-voltage-share", Interval.exact(over));
        context.add("median-running-voltage", Interval.ofStandardError(Robust.median(tens), context.voltageSe()));
        SourceCharacter.measure(context);
        if (over > MOSTLY_OVER) {
            return; // what follows asks whether the source gives too little
        }
        context.add("highest-charging-voltage", Interval.ofStandardError(highest, context.voltageSe()));
        context.add("charging-stopped", Interval.exact(stopped(v)));
        double[] moving = StepSelection.movingOnly(context.drive, v);
        context.add("low-running-voltage-share", Interval.exact(StepSelection.share(moving, x -> x < lowRunning())));
        boolean lifts = highest >= DriveContext.LIFTED_V;
        context.addGiven(
                mustSupply(context),
                lifts ? "unsupported-yet-lifted" : "unsupported-share",
                Interval.exact(unsupported(moving)));
        double charging = flowShare(moving, Regime.CHARGING);
        double low = context.startedLow();
        meanRunningCurrent().ifPresent(mean -> context.addGiven(low, "charging-when-low", mean));
        context.addGiven(low, "charging-share-when-low", Interval.exact(charging));
        context.addGiven(low, "holding-share-when-low", Interval.exact(flowShare(moving, Regime.HOLDING)));
        context.addGiven(low, "lift-when-low", Interval.ofStandardError(highest, context.voltageSe()));
        if (lifts) {
            context.addGiven(low, "failing-at-times", Interval.exact(Math.min(charging, unsupported(moving))));
        }
        context.firstReportedSoc()
                .ifPresent(soc -> context.addGiven(
                        needsCharge(soc),
                        "answer-to-reported-need",
                        Interval.exact(
                                StepSelection.share(moving, x -> x >= DriveContext.LIFTED_V - context.voltageSe()))));
    }

    /** Probability that a control which believes in this charge, %, asks for more: targets differ from make to make. */
    private static double needsCharge(double percent) {
        return Math.max(0, Math.min(1, (SURELY_ENOUGH - percent) / (SURELY_ENOUGH - SURELY_LOW)));
    }

    /**
     * Probability that the source has to supply the loads: a conventional one always, any one a low battery's, and a managed one
     * as soon as the battery gives more than 8 A (service texts).
     */
    static double mustSupply(DriveContext context) {
        return always(context, MANAGED_SUPPLIES, UNKNOWN_SUPPLIES);
    }

    /** Probability that the source has to charge: a managed one may leave a battery with charge to spare as it is. */
    static double mustCharge(DriveContext context) {
        return always(context, 0, UNKNOWN_CONVENTIONAL);
    }

    private static double always(DriveContext context, double managed, double unknown) {
        ChargingControl control = context.reference.facts().vehicle().chargingControl();
        double charged =
                control == ChargingControl.CONVENTIONAL ? 1 : control == ChargingControl.MANAGED ? managed : unknown;
        return charged + (1 - charged) * context.startedLow();
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
        double step = context.drive.grid().stepS();
        double[] after = Arrays.copyOfRange(v, last + 1, v.length);
        boolean supplies = Robust.quantile(after, SUPPLIES) < (mustCharge(context) < 0.5 ? NEVER_RESTS_V : NO_SOURCE_V);
        return charging * step >= CHARGED_S && supplies ? Robust.count(after) * step : 0;
    }

    private double overVoltage() {
        return 15.05 - 0.008 * (context.drive.temperatureC() - 20);
    }

    private double lowRunning() {
        return 13.0 - 0.003 * (context.drive.temperatureC() - 20);
    }

    private double unsupported(double[] v) {
        double rest = context.restV.map(Interval::value).orElse(12.3);
        double heavy = -8 * context.reference.size();
        double[] current = context.flow.current();
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
        if (context.flow.current() == null) {
            return Optional.empty();
        }
        double[] blocks =
                DriveSignals.blocks(context.drive.steadyOnly(context.flow.current()), DriveContext.BLOCK_STEPS);
        double mean = Robust.mean(blocks);
        return Double.isNaN(mean)
                ? Optional.empty()
                : Optional.of(Interval.ofStandardError(mean, context.flow.currentSe()));
    }

    /** Share of the steps with a value that lie in a regime, %. */
    private double flowShare(double[] v, Regime regime) {
        int n = 0;
        int hit = 0;
        for (int k = 0; k < v.length; k++) {
            if (!Double.isNaN(v[k])) {
                n++;
                hit += context.flow.regimes()[k] == regime ? 1 : 0;
            }
        }
        return n == 0 ? 0 : 100.0 * hit / n;
    }
}
