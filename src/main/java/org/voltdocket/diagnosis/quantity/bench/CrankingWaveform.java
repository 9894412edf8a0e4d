package org.voltdocket.diagnosis.quantity.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.regime.EngineStart;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.diagnosis.signal.RobustLine;
import org.voltdocket.kernel.Interval;

/**
 * The course of one start sampled at 50 Hz or more: inrush sag, plateau, recovery, and what the compressions do to the
 * plateau. What the recording does not carry is absent.
 */
final class CrankingWaveform {

    /** The inrush of a starter is over after this, s (common practice). */
    private static final double INRUSH_S = 0.15;
    /** Where the plateau begins, after the start and before its end, s (ours). */
    private static final double SETTLED_S = 0.25;

    private static final double LET_GO_S = 0.08;
    private static final double SHORTEST_PLATEAU_S = 0.3;
    /** Accuracy of a voltmeter, V, standard error (common practice). */
    private static final double METER_SE_V = 0.02;
    /** Back by this share of the drop counts as recovered (ours). */
    private static final double RECOVERED = 0.9;

    private final Evidence evidence;
    private final EngineStart start;
    private final double[] time;
    private final float[] volts;
    private final double intervalS;
    private final List<Measurement> out = new ArrayList<>();
    private final double celsius;

    private CrankingWaveform(Evidence evidence, EngineStart start, double celsius) {
        Recording recording = (Recording) evidence.reading();
        this.evidence = evidence;
        this.start = start;
        this.celsius = celsius;
        this.time = recording.timeS();
        this.volts = recording.channel(Channel.MEASURED_V);
        this.intervalS = recording.durationS() / Math.max(1, recording.rows() - 1);
    }

    /** Measures one start, °C for limits that depend on it. */
    static List<Measurement> of(Evidence evidence, EngineStart start, double celsius) {
        CrankingWaveform course = new CrankingWaveform(evidence, start, celsius);
        course.sag();
        double from = start.fromS() + SETTLED_S;
        double to = start.toS() - LET_GO_S;
        if (to - from >= SHORTEST_PLATEAU_S) {
            course.plateau(from, to);
        }
        return course.out;
    }

    private void add(String quantity, Interval value) {
        out.add(Measurement.of(quantity, evidence, value).at(celsius));
    }

    /** The deepest point of an inrush may lie between two samples: as far again as its neighbours lie above it. */
    private void sag() {
        int deepest = -1;
        for (int i = 0; i < time.length && time[i] <= start.fromS() + INRUSH_S; i++) {
            boolean inrush = time[i] >= start.fromS() && !Float.isNaN(volts[i]);
            deepest = inrush && (deepest < 0 || volts[i] < volts[deepest]) ? i : deepest;
        }
        if (deepest < 1 || deepest + 1 >= volts.length || !(start.beforeV() > 0)) {
            return;
        }
        double sag = start.beforeV() - volts[deepest];
        double missed = 0.5 * Math.abs(Math.min(volts[deepest - 1], volts[deepest + 1]) - volts[deepest]);
        double error = Interval.Z95 * METER_SE_V;
        add("inrush-sag", new Interval(sag, sag - error, sag + error + (Double.isNaN(missed) ? 0 : missed)));
    }

    private void plateau(double from, double to) {
        int first = Arrays.binarySearch(time, from);
        int last = Arrays.binarySearch(time, to);
        first = first < 0 ? -first - 1 : first;
        last = last < 0 ? -last - 1 : last;
        double[] t = new double[last - first];
        double[] v = new double[t.length];
        int n = 0;
        for (int i = first; i < last; i++) {
            if (!Float.isNaN(volts[i])) {
                t[n] = time[i];
                v[n++] = volts[i];
            }
        }
        t = Arrays.copyOf(t, n);
        v = Arrays.copyOf(v, n);
        RobustLine line = RobustLine.through(t, v);
        if (line == null) {
            return;
        }
        double level = Robust.median(v);
        double se = Math.sqrt(METER_SE_V * METER_SE_V + line.residualSd() * line.residualSd() / Math.sqrt(n));
        add("cranking-plateau", Interval.ofStandardError(level, se));
        for (int i = 0; i < n; i++) {
            v[i] -= line.intercept() + line.slope() * t[i];
        }
        CompressionRipple.in(t, v, noise()).forEach(this::add);
        recovery(level);
    }

    /** Noise of the voltmeter, V: what the rest before the start shows, or its accuracy where there is no rest. */
    private double noise() {
        double[] rest = new double[volts.length];
        Arrays.fill(rest, Double.NaN);
        for (int i = 0; i < volts.length && time[i] < start.fromS() - 0.1; i++) {
            rest[i] = volts[i];
        }
        return Robust.count(rest) < 10 ? METER_SE_V : Math.max(0.001, Robust.sd(rest));
    }

    private void recovery(double level) {
        double back = start.beforeV() - (1 - RECOVERED) * (start.beforeV() - level);
        for (int i = 0; i < time.length; i++) {
            if (time[i] > start.toS() && volts[i] >= back) {
                double took = time[i] - start.toS();
                add("recovery-time", new Interval(took, Math.max(0, took - intervalS), took + intervalS));
                return;
            }
        }
    }
}
