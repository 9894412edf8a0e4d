package org.voltdocket.diagnosis.quantity.drive;

import java.util.Optional;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.signal.NormalDistribution;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/**
 * How a source behaves whose voltage is unusual. One that is commanded too low or too high holds its voltage whatever the
 * loads are; one that is weak, slips or is badly regulated follows them. A cable drops in proportion to the current and still
 * leaves the battery above its rest voltage; a source that gives out leaves it below.
 */
final class SourceCharacter {

    private static final int BLOCK = 10;
    /** Time after a start in which any control may charge, s (ours). */
    private static final double AFTER_START_S = 45;
    /** Fewest 10 s means that tell a spread (ours). */
    private static final int FEWEST_BLOCKS = 12;

    /** Below this all the time, a source is not charging, V (as {@link DriveContext#LIFTED_V}, with the meter's error). */
    private static final double NEVER_CHARGES_V = 13.45;
    /** A battery above its rest voltage by this is carried by the source, V (ours). */
    private static final double CARRIED_V = 0.05;
    /** Where no rest voltage is known: probability that a source carries the loads (ours). */
    private static final double CARRIED_UNKNOWN = 0.5;
    /** Median voltage at 20 °C from which it may be too high, and from which it surely is, V, less 8 mV/K (ours). */
    private static final double MAYBE_OVER_V = 14.75;

    private static final double SURELY_OVER_V = 15.0;
    private static final double OVER_V_PER_K = 0.008;
    /** From here on a battery is being charged, V. */
    private static final double CHARGES_V = 13.9;
    /** A drive shorter than this does not tell whether charging ends, s (ours). */
    private static final double LONG_ENOUGH_S = 600;
    /** A source that sinks below this by more than {@link #SAGS_BY_V} sags, V (ours). */
    private static final double SAGS_BELOW_V = 13.5;

    private static final double SAGS_BY_V = 0.35;
    /** A source that leaves the battery no higher above its rest voltage does not carry the loads, V (ours). */
    private static final double GIVES_OUT_V = 0.1;

    private static final double SPREAD_V = 0.03;
    /** A sound conventional source regulates above this, V (vehicle workshop manual, 2018, less line drop). */
    private static final double REGULATED_V = 14.05;
    /** Loads move a voltage by more than this, V (ours). */
    private static final double MOVED_V = 0.25;
    /** Quantile taken for the best. */
    private static final double BEST = 0.98;
    /** A colder battery is charged on by managed charging too, °C, and from here on not (service texts: from 0 °C on). */
    private static final double COLD_C = 2;

    private static final double WARM_C = 10;

    private final DriveContext context;
    private final double[] all;
    private final double[] moving;

    private SourceCharacter(DriveContext context) {
        this.context = context;
        double[] v = context.drive.steadyOnly(context.drive.voltage());
        this.all = DriveSignals.blocks(v, BLOCK);
        this.moving = DriveSignals.blocks(StepSelection.movingOnly(context.drive, settled(v)), BLOCK);
    }

    static void measure(DriveContext context) {
        SourceCharacter source = new SourceCharacter(context);
        if (Robust.count(source.moving) >= FEWEST_BLOCKS) {
            source.low();
            source.high();
            source.full();
            source.sag();
            source.best();
        }
    }

    /** Without the time after each start. */
    private double[] settled(double[] v) {
        double[] out = v.clone();
        boolean[] running = context.drive.running();
        double since = 0;
        for (int k = 0; k < out.length; k++) {
            since = running[k] ? since + context.drive.grid().stepS() : 0;
            out[k] = since > AFTER_START_S ? out[k] : Double.NaN;
        }
        return out;
    }

    private Interval spread() {
        double spread = Robust.quantile(moving, 0.9) - Robust.quantile(moving, 0.1);
        double reach = Interval.Z95 * Math.hypot(SPREAD_V, 0.5 * context.drive.resolutionV());
        return new Interval(spread, Math.max(0, spread - reach), spread + reach);
    }

    /** A source that never charges, and yet carries the loads: how steady its voltage is. */
    private void low() {
        if (Robust.quantile(all, 1) < NEVER_CHARGES_V) {
            context.addGiven(carried(), "low-voltage-spread", spread());
        }
    }

    /** Probability that the source, not the battery, carries the loads. */
    private double carried() {
        if (context.flow.current() != null) {
            double amperes = Robust.median(context.drive.steadyOnly(context.flow.current()));
            double reach = Math.max(0.5, context.flow.currentSe());
            return NormalDistribution.cumulative((amperes + 2 * context.reference.size()) / reach);
        }
        double median = Robust.median(moving);
        return context.restV
                .map(rest -> NormalDistribution.chanceBelow(rest, median - CARRIED_V))
                .orElse(CARRIED_UNKNOWN);
    }

    /** A source whose voltage is too high: how steady it is. */
    private void high() {
        double at = Robust.median(moving) + OVER_V_PER_K * (context.drive.temperatureC() - 20);
        double over = Math.max(0, Math.min(1, (at - MAYBE_OVER_V) / (SURELY_OVER_V - MAYBE_OVER_V)));
        context.addGiven(over, "over-voltage-spread", spread());
    }

    /** How much of a drive a battery that is nearly full is charged. */
    private void full() {
        if (Robust.count(all) * BLOCK * context.drive.grid().stepS() >= LONG_ENOUGH_S) {
            double share = StepSelection.share(all, v -> v >= CHARGES_V);
            double warm = (context.drive.temperatureC() - COLD_C) / (WARM_C - COLD_C);
            context.addGiven(
                    Math.max(0, Math.min(1, warm)) * context.startedFull(),
                    "charging-when-full",
                    Interval.exact(share));
        }
    }

    /** The best that a source gives which is moved by the loads and stays short of regulation. */
    private void best() {
        double highest = Robust.quantile(all, BEST);
        if (highest < REGULATED_V && spread().value() > MOVED_V) {
            context.addGiven(
                    ChargingSourceQuantities.mustCharge(context),
                    "best-of-sagging",
                    Interval.ofStandardError(highest, context.voltageSe()));
        }
    }

    /** Where the voltage sags: how far the lowest tenth lies above the rest voltage. */
    private void sag() {
        double low = Robust.quantile(moving, 0.1);
        double high = Robust.quantile(moving, 0.9);
        Optional<Interval> rest = context.rested.map(Relaxation.Rested::voltage);
        if (rest.isPresent() && low < SAGS_BELOW_V && high - low > (high < SAGS_BELOW_V ? MOVED_V : SAGS_BY_V)) {
            double se = Math.hypot(rest.get().standardError(), context.voltageSe());
            double over = low - rest.get().value();
            context.addGiven(
                    over < GIVES_OUT_V
                            ? ChargingSourceQuantities.mustSupply(context)
                            : ChargingSourceQuantities.mustCharge(context),
                    "sag-over-rest",
                    Interval.ofStandardError(over, se));
        }
    }
}
