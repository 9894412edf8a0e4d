package org.voltdocket.diagnosis.quantity.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.quantity.BenchDischarge;
import org.voltdocket.diagnosis.quantity.Capacity;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/**
 * One capacity run: charge taken until the voltage crosses 10.50 V, weighted with time. Over a short gap the current is
 * taken to go straight; a run of which more is missing tells no capacity, but says how much is missing.
 */
final class DischargeRun {

    /** A pause between samples is a gap from here, s, or from ten times the usual one (ours). */
    private static final double GAP_S = 300;

    private static final double GAP_TIMES = 10;
    /** With more of the time than this in gaps no capacity is told, % (ours). */
    static final double MOST_GAP = 5;
    /** Relative standard error of clamp and end (common practice). */
    private static final double SE = 0.02;
    /** The same for a temperature that nobody told: 1 % a kelvin, some 2.5 K (common practice). */
    private static final double UNKNOWN_TEMPERATURE_SE = 0.025;

    private final Recording recording;
    private final double[] time;
    private final double[] volts;
    private final double[] amperes;
    private double ampereHours;
    private double endS;
    private double gapS;
    private boolean reached;
    private int samples;

    private DischargeRun(Recording recording, int from, int to) {
        this.recording = recording;
        this.time = Arrays.copyOfRange(recording.timeS(), from, to);
        this.volts = Arrays.copyOfRange(wide(recording.channel(Channel.MEASURED_V), 1), from, to);
        this.amperes = Arrays.copyOfRange(wide(recording.channel(Channel.MEASURED_A), -1), from, to);
        integrate();
    }

    static DischargeRun of(Recording recording) {
        BenchDischarge all = new BenchDischarge(0, recording.rows());
        BenchDischarge part = BenchDischarge.of(recording).orElse(all);
        return new DischargeRun(recording, part.from(), part.to());
    }

    private void integrate() {
        double longest = Math.max(GAP_S, GAP_TIMES * medianStep());
        int last = -1;
        double lastV = Double.NaN;
        double lastVS = Double.NaN;
        for (int i = 0; i < time.length && !reached; i++) {
            reached = volts[i] <= Capacity.END_V;
            double stop = reached ? crossing(lastVS, lastV, i) : time[i];
            if (!Double.isNaN(amperes[i])) {
                samples++;
                if (last >= 0) {
                    double share = (stop - time[last]) / (time[i] - time[last]);
                    double there = amperes[last] + share * (amperes[i] - amperes[last]);
                    ampereHours += 0.5 * (amperes[last] + there) * (stop - time[last]) / 3600;
                    gapS += stop - time[last] > longest ? stop - time[last] : 0;
                }
                last = i;
                endS = stop;
            }
            if (!Double.isNaN(volts[i])) {
                lastV = volts[i];
                lastVS = time[i];
            }
        }
    }

    /** When the voltage crossed the end between the last sample above it and this one, not before the last current. */
    private double crossing(double beforeS, double beforeV, int i) {
        if (!(beforeV > Capacity.END_V)) {
            return time[i];
        }
        return beforeS + (time[i] - beforeS) * (beforeV - Capacity.END_V) / (beforeV - volts[i]);
    }

    private double medianStep() {
        double[] steps = new double[time.length];
        Arrays.fill(steps, Double.NaN);
        double last = Double.NaN;
        for (int i = 0; i < time.length; i++) {
            if (!Double.isNaN(amperes[i])) {
                steps[i] = time[i] - last;
                last = time[i];
            }
        }
        double median = Robust.median(steps);
        return Double.isNaN(median) ? 0 : median;
    }

    private double durationS() {
        return Math.max(1e-9, endS - time[0]);
    }

    private double gapShare() {
        return 100 * gapS / durationS();
    }

    private double temperature() {
        float[] ambient = recording.channel(Channel.AMBIENT);
        return ambient == null ? Double.NaN : Robust.mean(wide(ambient, 1));
    }

    private double at25() {
        double celsius = temperature();
        return Capacity.at25(ampereHours, Double.isNaN(celsius) ? 25 : celsius);
    }

    /** Mean current and capacity; empty where the end was not reached or too much is missing. */
    Optional<Capacity.Run> run() {
        boolean whole = reached && gapShare() <= MOST_GAP && ampereHours > 0;
        return whole ? Optional.of(new Capacity.Run(ampereHours / (durationS() / 3600), at25())) : Optional.empty();
    }

    /** What the run says of the battery. */
    List<Measurement> measurements(Evidence evidence, Double nominalAh) {
        List<Measurement> out = new ArrayList<>();
        if (samples < 2) {
            return out;
        }
        out.add(Measurement.exact("capacity-gap", evidence, gapShare()));
        if (nominalAh == null || gapShare() > MOST_GAP) {
            return out;
        }
        double share = 100 * at25() / nominalAh;
        double unknown = Double.isNaN(temperature()) ? UNKNOWN_TEMPERATURE_SE : 0;
        double gaps = gapShare() / 200;
        double se = share * Math.sqrt(SE * SE + unknown * unknown + gaps * gaps);
        if (reached) {
            out.add(Measurement.of("capacity-share", evidence, Interval.ofStandardError(share, se)));
        } else if (share >= 100) {
            out.add(Measurement.exact("capacity-share", evidence, 100));
        }
        return out;
    }

    /** A channel as doubles, each times {@code sign}. */
    static double[] wide(float[] values, double sign) {
        double[] out = new double[values.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = sign * values[i];
        }
        return out;
    }
}
