package org.voltdocket.diagnosis.regime;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * Detects engine starts in the raw samples of the measured voltage: a pull of 0.8 V or more below the seconds before, to less
 * than 11.8 V, that ends within 12 s. The limits are ours; starters pull a healthy 12 V battery to 9 to 11 V (common
 * practice).
 *
 * <p>A strong battery, a resistance in the cable of the starter, or rows that miss the deepest point leave a smaller pull. It
 * is a start where a calm battery was pulled down for a few seconds and stays higher afterwards: only a charging source lifts
 * it.
 */
public final class EngineStartDetector {

    private static final double PULL_V = 0.8;
    private static final double CEILING_V = 11.8;
    private static final double LONGEST_S = 12;
    private static final double JOIN_S = 1.0;
    private static final double SLOW_SAMPLING_S = 0.3;
    private static final int BEFORE_STEPS = 4;
    /** A smaller pull that a lift follows, V, and the voltage that it is below (ours). */
    private static final double SMALL_PULL_V = 0.3;

    private static final double SMALL_CEILING_V = 12.4;
    /** A lift that only a charging source gives, V, and how long after the pull it is looked for, s (ours). */
    private static final double LIFT_V = 0.12;

    private static final double LIFT_WITHIN_S = 15;
    /** A starter turns for less than this, s (common practice). */
    private static final double SHORT_S = 5;
    /** A battery with the engine off lies below this, V. */
    private static final double OFF_V = 13.0;
    /** A parked car's voltage varies by less than this in the seconds before, V (ours). */
    private static final double CALM_V = 0.2;

    private static final int CALM_STEPS = 20;
    /** No second start within this, s (ours). */
    private static final double APART_S = 20;

    private EngineStartDetector() {}

    /**
     * @param grid 1 s grid over the recording
     * @return starts in time order
     */
    public static List<EngineStart> in(Grid grid) {
        Recording recording = grid.recording();
        double[] time = recording.timeS();
        float[] v = recording.channel(Channel.MEASURED_V);
        boolean slow = recording.durationS() / Math.max(1, recording.rows() - 1) > SLOW_SAMPLING_S;
        List<EngineStart> starts = new ArrayList<>();
        int row = 0;
        while (row < v.length) {
            // Most rows are far above: no need to look at the seconds before them.
            if (!(v[row] < CEILING_V)) {
                row++;
                continue;
            }
            double before = before(grid, time[row]);
            if (!down(v[row], before)) {
                row++;
                continue;
            }
            int last = row;
            int backing = 0;
            double least = v[row];
            int next = row;
            while (next < v.length && time[next] - time[last] <= JOIN_S) {
                backing += pulled(v[next], before) ? 1 : 0;
                if (down(v[next], before)) {
                    last = next;
                    least = Math.min(least, v[next]);
                }
                next++;
            }
            double after = after(time, v, last);
            boolean short_ = time[last] - time[row] <= LONGEST_S;
            boolean recovers = Double.isNaN(after) ? next >= v.length : after - least >= 0.5;
            boolean backed = backing >= 2 || slow && (starts.isEmpty() || Math.abs(after - before) > 0.15);
            if (short_ && recovers && backed) {
                starts.add(new EngineStart(time[row], time[last], before, least, after));
            }
            row = last + 1;
        }
        return withSmall(grid, starts);
    }

    /** The starts, and those with a smaller pull that a lift follows. */
    private static List<EngineStart> withSmall(Grid grid, List<EngineStart> starts) {
        Recording recording = grid.recording();
        double[] time = recording.timeS();
        float[] v = recording.channel(Channel.MEASURED_V);
        List<EngineStart> out = new ArrayList<>(starts);
        for (int row = 1; row < v.length; row++) {
            if (!(v[row] < SMALL_CEILING_V) || !(v[row] < v[row - 1])) {
                continue;
            }
            double at = time[row];
            double before = before(grid, at);
            boolean pulled = v[row] < before - SMALL_PULL_V && before < OFF_V && calm(grid, at);
            if (pulled && out.stream().noneMatch(s -> Math.abs(s.fromS() - at) < APART_S)) {
                EngineStart start = small(grid, row, before);
                if (start != null) {
                    out.add(start);
                }
            }
        }
        out.sort(Comparator.comparingDouble(EngineStart::fromS));
        return out;
    }

    /** The start whose pull begins at a row; null where no lift follows. */
    private static EngineStart small(Grid grid, int row, double before) {
        Recording recording = grid.recording();
        double[] time = recording.timeS();
        float[] v = recording.channel(Channel.MEASURED_V);
        double rowS = grid.rowS();
        int last = row;
        double least = v[row];
        for (int k = row; k < v.length && time[k] - time[last] <= Math.max(JOIN_S, rowS); k++) {
            if (v[k] < before - SMALL_PULL_V) {
                last = k;
                least = Math.min(least, v[k]);
            }
        }
        int pulled = last - row + 1;
        boolean once = rowS < SLOW_SAMPLING_S && pulled < 2;
        if (once || time[last] - time[row] > Math.max(SHORT_S, 1.5 * rowS)) {
            return null;
        }
        double lifted = medianAfter(time, v, last, Math.max(LIFT_WITHIN_S, 3.5 * rowS));
        return lifted >= before + LIFT_V
                ? new EngineStart(time[row], time[last], before, least, after(time, v, last))
                : null;
    }

    /** Whether the voltage stays put in the seconds before, but for the very last one. */
    private static boolean calm(Grid grid, double atS) {
        int step = (int) ((atS - grid.startS()) / grid.stepS());
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        int n = 0;
        for (int k = Math.max(0, step - CALM_STEPS); k < step - 1; k++) {
            double v = grid.voltage()[k];
            if (!Double.isNaN(v)) {
                n++;
                low = Math.min(low, v);
                high = Math.max(high, v);
            }
        }
        return n >= BEFORE_STEPS - 1 && high - low < CALM_V;
    }

    /** Half a pull: what the starter still takes once it turns. */
    private static boolean pulled(float v, double before) {
        return !Float.isNaN(v) && v < before - 0.5 * PULL_V;
    }

    private static boolean down(float v, double before) {
        return !Float.isNaN(v) && v < before - PULL_V && v < CEILING_V;
    }

    /** The highest step of the few before; NaN at the very start of a recording. */
    private static double before(Grid grid, double atS) {
        int step = (int) ((atS - grid.startS()) / grid.stepS());
        double high = Double.NaN;
        for (int k = Math.max(0, step - BEFORE_STEPS); k < step; k++) {
            double v = grid.voltage()[k];
            if (!Double.isNaN(v) && !(high >= v)) {
                high = v;
            }
        }
        return high;
    }

    private static double after(double[] time, float[] v, int last) {
        return medianAfter(time, v, last, 3);
    }

    private static double medianAfter(double[] time, float[] v, int last, double seconds) {
        int end = last + 1;
        while (end < time.length && time[end] <= time[last] + seconds) {
            end++;
        }
        double[] window = new double[end - last - 1];
        for (int i = 0; i < window.length; i++) {
            window[i] = v[last + 1 + i];
        }
        return Robust.median(window);
    }
}
