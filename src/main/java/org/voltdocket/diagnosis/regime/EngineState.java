package org.voltdocket.diagnosis.regime;

import java.util.Arrays;
import java.util.List;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.diagnosis.signal.Robust;

/** Finds whether the engine runs: from the engine speed if it was recorded, else by {@link EngineStateModel}. */
public final class EngineState {

    /** No engine runs slower and no starter turns one faster, 1/min (common practice). */
    private static final double RUNNING_RPM = 400;
    /** Charging sources hold more than this, and no resting battery does for long, V. */
    private static final double ONLY_CHARGED_V = 13.25;

    /** A vehicle that moves faster than this for {@link #DRIVING_S} drives, km/h (ours). */
    private static final double DRIVING_KMH = 5;

    private static final double DRIVING_S = 10;
    /** A source lifts the voltage by this for as long, V and s (ours). */
    private static final double LIFT_V = 0.2;

    private static final double LIFTED_S = 60;
    /** A recording that begins with a running engine begins at this or above, V (ours). */
    private static final double RUNS_FROM_V = 12.95;
    /** The loads of a running engine without a source let it sink by this for as long, V and s (ours). */
    private static final double LOAD_V = 0.2;

    private static final double LOADED_S = 300;

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
     * recorded, by a driver's mark, by a voltage that no resting battery holds, or by a source that lifts the voltage or a load
     * that lets it sink for minutes.
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
                || Robust.quantile(grid.voltage(), 0.9) > ONLY_CHARGED_V
                || movesVoltage(grid);
    }

    /** Whether the voltage of what looks like a running engine differs from that of the parked vehicle before it. */
    private static boolean movesVoltage(Grid grid) {
        boolean[] on = EngineStateModel.running(grid, List.of());
        int near = (int) Math.ceil(Math.max(LIFTED_S, 3 * grid.rowS()) / grid.stepS());
        for (int from = 0; from < on.length; from++) {
            if (!on[from] || from > 0 && on[from - 1]) {
                continue;
            }
            int to = from;
            while (to < on.length && on[to]) {
                to++;
            }
            double[] v = grid.voltage();
            double runs = Robust.median(Arrays.copyOfRange(v, from, to));
            double lift = runs - Robust.median(Arrays.copyOfRange(v, Math.max(0, from - near), from));
            double seconds = (to - from) * grid.stepS();
            boolean loaded = !grid.recording().has(Channel.SPEED) && seconds >= LOADED_S && lift <= -LOAD_V;
            if (seconds >= LIFTED_S && lift >= LIFT_V || loaded) {
                return true;
            }
            double fall = runs - Robust.median(Arrays.copyOfRange(v, to, Math.min(v.length, to + near)));
            if (from == 0 && seconds >= LIFTED_S && fall >= LIFT_V && runs >= RUNS_FROM_V) {
                return true;
            }
        }
        return false;
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
