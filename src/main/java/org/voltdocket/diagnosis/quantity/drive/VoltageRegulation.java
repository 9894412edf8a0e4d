package org.voltdocket.diagnosis.quantity.drive;

import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/** Voltage of the charging source when cold and when slowing down, and level, spread and sag of the regulated voltage. */
final class VoltageRegulation {

    /** A colder engine than this after a start needs its battery charged by any control (common practice: 40 to 60 °C), °C. */
    private static final double COLD_C = 40;

    private static final double MOVING_KMH = 15;
    /** Slowing down: km/h less than three seconds ago. */
    private static final double SLOWING_KMH = 4;

    private static final int SLOWING_STEPS = 3;
    private static final int FEWEST_STEPS = 20;
    private static final int FEWEST_BLOCKS = 6;
    private static final double METER_V = 0.02;
    private static final double LINE_V = 0.05;
    private static final int BLOCK = 10;
    /** From here on a source holds a charging voltage, V. */
    private static final double CHARGING_V = 13.2;

    private final DriveContext context;
    private final double[] steady;

    private VoltageRegulation(DriveContext context) {
        this.context = context;
        this.steady = context.drive.steadyOnly(context.drive.voltage());
    }

    static void measure(DriveContext context) {
        VoltageRegulation all = new VoltageRegulation(context);
        all.cold();
        all.slowing();
        all.regulation();
    }

    private void cold() {
        double[] coolant = context.drive.grid().held(Channel.COOLANT, 0);
        if (coolant == null) {
            return;
        }
        double[] v = steady.clone();
        for (int k = 0; k < v.length; k++) {
            v[k] = coolant[k] < COLD_C ? v[k] : Double.NaN;
        }
        double highest = Robust.quantile(DriveSignals.blocks(v, BLOCK), 1);
        if (Robust.count(v) >= 2 * FEWEST_STEPS && !Double.isNaN(highest)) {
            context.add("lift-when-cold", Interval.ofStandardError(highest, METER_V));
        }
    }

    /** How much higher the posts lie while slowing down than at other times of moving. */
    private void slowing() {
        double[] speed = context.drive.speed();
        if (speed == null) {
            return;
        }
        double[] slower = new double[steady.length];
        double[] other = new double[steady.length];
        for (int k = 0; k < steady.length; k++) {
            double before = k < SLOWING_STEPS ? Double.NaN : speed[k - SLOWING_STEPS];
            boolean moves = speed[k] > MOVING_KMH;
            slower[k] = moves && before - speed[k] >= SLOWING_KMH ? steady[k] : Double.NaN;
            other[k] = moves && before - speed[k] < SLOWING_KMH / 2 ? steady[k] : Double.NaN;
        }
        int n = Robust.count(slower);
        if (n >= FEWEST_STEPS && Robust.count(other) >= FEWEST_STEPS) {
            double se = Math.hypot(METER_V, 1.25 * Robust.sd(slower) / Math.sqrt(n / 5.0));
            double rise = Robust.median(slower) - Robust.median(other);
            context.add("rise-when-slowing", Interval.ofStandardError(rise, se));
        }
    }

    /** Level and spread of the voltage that a regulator holds, standstills left out; by ambient temperature. */
    private void regulation() {
        double[] blocks = DriveSignals.blocks(StepSelection.movingOnly(context.drive, steady), BLOCK);
        double[] held = blocks.clone();
        for (int b = 0; b < held.length; b++) {
            held[b] = held[b] >= CHARGING_V ? held[b] : Double.NaN;
        }
        int n = Robust.count(held);
        if (n < FEWEST_BLOCKS || 2 * n < Robust.count(blocks)) {
            return; // not held for most of the time: there is no level to tell
        }
        double sd = Robust.sd(held);
        double se = Math.hypot(LINE_V, 1.25 * sd / Math.sqrt(n));
        context.add("regulated-voltage", Interval.ofStandardError(Robust.median(held), se));
        double reach = Interval.Z95 * sd / Math.sqrt(2.0 * n);
        context.add("regulation-spread", new Interval(sd, Math.max(0, sd - reach), sd + reach));
        double sag = Robust.median(held) - Robust.quantile(blocks, 0.1);
        context.add("sag-under-load", Interval.ofStandardError(sag, se));
    }
}
