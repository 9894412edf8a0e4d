package org.voltdocket.diagnosis.regime;

import java.util.Arrays;
import java.util.List;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * Whether the engine runs at each step of a grid: from the engine speed where it was recorded, else from the starts and
 * the steps that the voltage takes when the charging source leaves.
 */
public final class EngineState {

    /** No engine runs slower and no starter turns one faster, 1/min (common practice). */
    private static final double RUNNING_RPM = 400;
    /** Charging sources hold more than this, and no resting battery does for long, V. */
    private static final double ONLY_CHARGED_V = 13.25;

    /** A vehicle that moves faster than this for {@link #DRIVING_S} drives, km/h (ours). */
    private static final double DRIVING_KMH = 5;

    private static final double DRIVING_S = 10;

    private EngineState() {}

    /**
     * @param grid 1 s grid
     * @param starts the starts found in it
     * @return for each step, whether the engine runs
     */
    public static boolean[] running(Grid grid, List<EngineStart> starts) {
        double[] rpm = grid.held(Channel.ENGINE_RPM, rpmDelay(grid, starts));
        boolean told = rpm != null && Robust.count(rpm) > grid.steps() / 10;
        if (told) {
            return fromSpeed(grid, rpm, starts);
        }
        return EngineStateModel.running(grid, starts);
    }

    /**
     * Whether the engine runs at some time in a recording without a start: by its speed or the road speed where they were
     * recorded, by a driver's mark, or by a voltage that no resting battery holds.
     *
     * @param grid 1 s grid
     */
    public static boolean seenRunning(Grid grid) {
        double[] rpm = grid.held(Channel.ENGINE_RPM, 0);
        if (rpm != null && Robust.count(rpm) > grid.steps() / 10) {
            return Robust.quantile(rpm, 1) > RUNNING_RPM;
        }
        return drives(grid)
                || EngineMarks.started(grid.recording().marks())
                || Robust.quantile(grid.voltage(), 0.9) > ONLY_CHARGED_V;
    }

    private static boolean drives(Grid grid) {
        double[] speed = grid.held(Channel.SPEED, 0);
        int moving = 0;
        for (int k = 0; speed != null && k < speed.length; k++) {
            moving += speed[k] > DRIVING_KMH ? 1 : 0;
        }
        return moving * grid.stepS() >= DRIVING_S;
    }

    private static boolean[] fromSpeed(Grid grid, double[] rpm, List<EngineStart> starts) {
        boolean[] on = new boolean[grid.steps()];
        boolean now = firstKnown(rpm) > RUNNING_RPM && starts.isEmpty();
        for (int k = 0; k < on.length; k++) {
            if (!Double.isNaN(rpm[k])) {
                now = rpm[k] > RUNNING_RPM;
            }
            on[k] = now;
        }
        return on;
    }

    private static double firstKnown(double[] values) {
        for (double v : values) {
            if (!Double.isNaN(v)) {
                return v;
            }
        }
        return Double.NaN;
    }

    /** How much later than the end of the starts the engine speed is told, s, 0 to 5. */
    private static double rpmDelay(Grid grid, List<EngineStart> starts) {
        double[] rpm = grid.held(Channel.ENGINE_RPM, 0);
        if (rpm == null || starts.isEmpty()) {
            return 0;
        }
        double[] delays = new double[starts.size()];
        Arrays.fill(delays, Double.NaN);
        for (int i = 0; i < delays.length; i++) {
            int from = grid.stepOf(starts.get(i).fromS());
            for (int k = from; k < Math.min(grid.steps(), from + 12); k++) {
                if (rpm[k] > RUNNING_RPM && k > 0 && !(rpm[k - 1] > RUNNING_RPM)) {
                    delays[i] = (k - grid.stepOf(starts.get(i).toS())) * grid.stepS();
                    break;
                }
            }
        }
        double delay = Robust.median(delays);
        return Double.isNaN(delay) ? 0 : Math.max(0, Math.min(5, delay - 0.5 * grid.stepS()));
    }
}
