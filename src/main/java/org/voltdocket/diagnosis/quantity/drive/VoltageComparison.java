package org.voltdocket.diagnosis.quantity.drive;

import java.util.Arrays;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.diagnosis.signal.RobustLine;
import org.voltdocket.diagnosis.signal.RobustRegression;
import org.voltdocket.kernel.Interval;

/**
 * Reported less measured voltage, split in three by one robust regression: a bias (a voltmeter that is off), a gain (one
 * that lies the more the higher the voltage) and a part proportional to the current (a cable, ground or joint). What the
 * recording does not vary enough to tell is absent. Where no current is known, a difference that grows with the voltage stands
 * for one that grows with the current, which lifts it: no voltmeter is right at rest and far off a volt above.
 */
final class VoltageComparison {

    /** Voltage that the bias is told at, V: the middle of what a running vehicle shows. */
    private static final double AT_V = 13;
    /** A current that swings less than this tells no resistance, A for a 70 Ah battery (ours). */
    private static final double SWING_A = 8;

    private static final double SWING_V = 0.8;
    private static final double VAGUE_GAIN = 0.012;
    /** A gain further from 1 is taken off before the cable is told; a smaller one is within what delays leave (ours). */
    private static final double LYING_GAIN = 0.05;

    /** What delays and quantisation make of a gain, standard error (ours). */
    private static final double OWN_GAIN = 0.015;

    private static final double VAGUE_OHM = 0.004;
    /** Two voltmeters agree no better than this, V, standard error (common practice). */
    private static final double METER_V = 0.015;

    private static final double OWN_MILLIOHM = 0.6;
    /** Blocks on either side of a load step that the levels are taken from. */
    private static final int FEWEST_STEPS = 8;

    private static final double STEP_A = 5;
    /** Share of a resolution that means of many values still err by (ours). */
    private static final double COARSE_SHARE = 0.25;

    private final DriveContext context;
    private final double[] gap;
    private final double[] volts;
    private final double[] amperes;

    private VoltageComparison(DriveContext context) {
        this.context = context;
        double[] reported = context.drive.reportedV();
        double[] measured = context.drive.voltage();
        double[] apart = new double[measured.length];
        double[] known = new double[measured.length];
        for (int k = 0; k < apart.length; k++) {
            boolean usable = !context.drive.nearStart(k) && StepSelection.calm(context.drive, k);
            apart[k] = usable ? reported[k] - measured[k] : Double.NaN;
            known[k] = usable ? measured[k] - AT_V : Double.NaN;
        }
        this.gap = DriveSignals.blocks(apart, DriveContext.BLOCK_STEPS);
        this.volts = DriveSignals.blocks(known, DriveContext.BLOCK_STEPS);
        double[] current = context.flow.current() != null ? context.flow.current() : context.drive.reportedA();
        this.amperes = current == null ? nothing(gap.length) : DriveSignals.blocks(current, DriveContext.BLOCK_STEPS);
    }

    private static double[] nothing(int n) {
        double[] out = new double[n];
        Arrays.fill(out, Double.NaN);
        return out;
    }

    static void measure(DriveContext context) {
        if (context.drive.reportedV() != null) {
            VoltageComparison all = new VoltageComparison(context);
            all.split();
            all.bySteps();
        }
    }

    private void split() {
        boolean flows = swing(amperes) >= SWING_A * context.reference.size();
        boolean varies = swing(volts) >= SWING_V;
        RobustRegression all = flows && varies ? RobustRegression.of(gap, volts, amperes) : null;
        boolean split = all != null && all.se()[1] < VAGUE_GAIN && all.se()[2] < VAGUE_OHM;
        if (split) {
            gain(all.by()[1], all.se()[1]);
        }
        if (split && Math.abs(all.by()[1]) > LYING_GAIN) {
            bias(all.by()[0], all.se()[0]);
            ohm(all.by()[2], all.se()[2]);
            return;
        }
        RobustRegression cable = flows ? RobustRegression.of(gap, amperes) : null;
        if (cable != null && cable.se()[1] < VAGUE_OHM) {
            bias(cable.by()[0], cable.se()[0]);
            ohm(cable.by()[1], cable.se()[1]);
            return;
        }
        RobustRegression meter = varies && !flows ? RobustRegression.of(gap, volts) : null;
        if (meter != null && meter.se()[1] < VAGUE_GAIN) {
            bias(meter.by()[0], meter.se()[0]);
            if (meter.by()[1] < 0) {
                gain(meter.by()[1], meter.se()[1]); // no resistance is negative
            }
            context.add("gap-by-voltage", Interval.ofStandardError(meter.by()[1], Math.hypot(OWN_GAIN, meter.se()[1])));
            return;
        }
        double median = Robust.median(gap);
        if (!Double.isNaN(median)) {
            bias(median, 0.02);
        }
    }

    /** What the resolution of the reported voltage leaves open over the swing of the current, Ω. */
    private double coarse() {
        double resolution = Robust.resolution(
                context.drive.grid().recording().channel(Channel.REPORTED_V), DriveSignals.COARSEST_V);
        return COARSE_SHARE * resolution / Math.max(STEP_A, swing(amperes));
    }

    private static double swing(double[] values) {
        return Robust.quantile(values, 0.95) - Robust.quantile(values, 0.05);
    }

    private void bias(double value, double se) {
        Interval bias = Interval.ofStandardError(value, Math.max(METER_V, se));
        context.estimates.put("voltageDisagreementV", bias);
        context.add("reported-voltage-bias", bias);
    }

    private void gain(double value, double se) {
        Interval gain = Interval.ofStandardError(1 + value, Math.hypot(OWN_GAIN, se));
        context.estimates.put("voltageGain", gain);
        context.add("reported-voltage-gain", gain);
    }

    private void ohm(double value, double se) {
        Interval milliohm = Interval.ofStandardError(1000 * value, 1000 * (se + coarse()) + OWN_MILLIOHM);
        if (milliohm.high() < 0) {
            return; // no resistance is negative: another current than the battery's flows through the cable
        }
        context.estimates.put("harnessResistanceMilliohm", milliohm);
        context.add("harness-resistance", milliohm);
    }

    /** How the difference moves with the current where a load steps: free of bias, gain and drift, but of few points. */
    private void bySteps() {
        int n = gap.length;
        double[] dGap = nothing(n);
        double[] dAmperes = nothing(n);
        for (int b = 2; b + 1 < n; b++) {
            double step = amperes[b + 1] - amperes[b - 2];
            boolean level = Math.abs(amperes[b + 1] - amperes[b]) < STEP_A / 2
                    || Math.abs(amperes[b - 1] - amperes[b - 2]) < STEP_A / 2;
            boolean holds = Math.abs(volts[b + 1] - volts[b - 2]) < SWING_V;
            if (Math.abs(step) >= STEP_A && level && holds) {
                dAmperes[b] = step;
                dGap[b] = gap[b + 1] - gap[b - 2];
            }
        }
        RobustLine line = RobustLine.through(dAmperes, dGap);
        if (line != null && line.points() >= FEWEST_STEPS && line.slopeSe() < VAGUE_OHM) {
            context.add(
                    "harness-by-steps",
                    Interval.ofStandardError(1000 * line.slope(), 1000 * (line.slopeSe() + coarse()) + OWN_MILLIOHM));
        }
    }
}
