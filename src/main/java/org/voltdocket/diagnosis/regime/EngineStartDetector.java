package org.voltdocket.diagnosis.regime;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * Detects engine starts in the raw samples of the measured voltage: a pull of 0.8 V or more below the seconds before, to less
 * than 11.8 V, that ends within 12 s. The limits are ours; starters pull a healthy 12 V battery to 9 to 11 V (common
 * practice).
 */
public final class EngineStartDetector {

    private static final double PULL_V = 0.8;
    private static final double CEILING_V = 11.8;
    private static final double LONGEST_S = 12;
    private static final double JOIN_S = 1.0;
    private static final double SLOW_SAMPLING_S = 0.3;
    private static final int BEFORE_STEPS = 4;

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
        return starts;
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
        int end = last + 1;
        while (end < time.length && time[end] <= time[last] + 3) {
            end++;
        }
        double[] window = new double[end - last - 1];
        for (int i = 0; i < window.length; i++) {
            window[i] = v[last + 1 + i];
        }
        return Robust.median(window);
    }
}
