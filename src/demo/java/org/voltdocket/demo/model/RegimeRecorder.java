package org.voltdocket.demo.model;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.diagnosis.Regime;

/** Records the true regimes from the smoothed battery current; while the engine runs, a regime lasts at least {@value #SHORTEST_S} s. */
final class RegimeRecorder {

    /** Below this the battery takes and gives about nothing, A. */
    private static final double ABOUT_NONE_A = 1.0;

    private static final double SMOOTH_S = 6;
    private static final double SHORTEST_S = 3;

    private final List<GroundTruth.Span> spans = new ArrayList<>();
    private Regime now;
    private double sinceS;
    private double smooth;

    void engineRuns(double t, double batteryA, double dt) {
        smooth += (batteryA - smooth) * Math.min(1, dt / SMOOTH_S);
        Regime seen =
                smooth > ABOUT_NONE_A ? Regime.CHARGING : smooth < -ABOUT_NONE_A ? Regime.DISCHARGING : Regime.HOLDING;
        boolean running = now == Regime.CHARGING || now == Regime.HOLDING || now == Regime.DISCHARGING;
        if (running && t - sinceS < SHORTEST_S) {
            return;
        }
        set(t, seen);
    }

    void set(double t, Regime regime) {
        if (regime == now) {
            return;
        }
        if (regime == Regime.CRANKING || regime == Regime.STOPPED || regime == Regime.REST) {
            smooth = 0;
        }
        close(t);
        now = regime;
        sinceS = t;
    }

    List<GroundTruth.Span> done(double t) {
        close(t);
        return spans;
    }

    private void close(double t) {
        if (now != null && t > sinceS) {
            spans.add(new GroundTruth.Span(sinceS, t, now));
        }
    }
}
