package org.voltdocket.evidence.series;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.evidence.Series;

/**
 * Reduces one channel for drawing. Up to {@code points} samples remain unchanged; more are divided
 * into {@code (points − 2) / 2} equal intervals, each with its minimum and maximum at their times,
 * besides the first and the last sample.
 *
 * <p>A gap is marked by a null in its middle. A gap is longer than five times the channel's median step, than
 * 2 s and, if samples are reduced, than an interval; a shorter one would be invisible.
 */
final class SeriesDecimator {

    private static final double LEAST_GAP_S = 2;

    private final int points;
    private final double from;
    private final double width;
    private final double gap;
    private final Line whole = new Line();
    private final Line thin = new Line();
    private long samples;
    private int stretch = -1;
    private double lowT;
    private float lowV;
    private double highT;
    private float highV;
    private double lastT;
    private float lastV;

    SeriesDecimator(double from, double to, int points, double medianStepS) {
        this.points = points;
        this.from = from;
        this.width = (to - from) / Math.max(1, (points - 2) / 2);
        this.gap = Math.max(LEAST_GAP_S, 5 * medianStepS);
    }

    /** Takes the next sample; times increase, values are no NaN. */
    void add(double t, float v) {
        double step = t - lastT;
        if (samples < points) {
            if (samples > 0 && step > gap) {
                whole.breakAt(lastT + step / 2);
            }
            whole.put(t, v);
        }
        boolean broken = samples > 0 && step > Math.max(gap, width);
        if (samples == 0 || broken) {
            if (broken) {
                leave();
                thin.put(lastT, lastV);
                thin.breakAt(lastT + step / 2);
            }
            thin.put(t, v);
        }
        int now = width > 0 ? (int) ((t - from) / width) : 0;
        if (now != stretch || broken) {
            if (!broken) {
                leave();
            }
            stretch = now;
            lowT = highT = t;
            lowV = highV = v;
        } else if (v < lowV) {
            lowT = t;
            lowV = v;
        } else if (v > highV) {
            highT = t;
            highV = v;
        }
        samples++;
        lastT = t;
        lastV = v;
    }

    private void leave() {
        if (samples == 0) {
            return;
        }
        boolean lowFirst = lowT <= highT;
        thin.put(lowFirst ? lowT : highT, lowFirst ? lowV : highV);
        thin.put(lowFirst ? highT : lowT, lowFirst ? highV : lowV);
    }

    Series.Line line() {
        if (samples <= points) {
            return whole.done();
        }
        leave();
        thin.put(lastT, lastV);
        return thin.done();
    }

    /** Points in increasing time; one that is there already is left out. */
    private static final class Line {
        private final List<Double> t = new ArrayList<>();
        private final List<Float> v = new ArrayList<>();

        void put(double at, float value) {
            if (t.isEmpty() || at > t.get(t.size() - 1)) {
                t.add(at);
                v.add(value);
            }
        }

        void breakAt(double at) {
            t.add(at);
            v.add(null);
        }

        Series.Line done() {
            return new Series.Line(t, v);
        }
    }
}
