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
public final class Engine {

    /** No engine runs slower and no starter turns one faster, 1/min (common practice). */
    private static final double RUNNING_RPM = 400;
    /** Charging sources hold more than this, and no resting battery does for long, V. */
    private static final double ONLY_CHARGED_V = 13.25;

    private static final int LONGEST_STOP_STEPS = 240;
    /** A quiet stretch of this length before a start is a parked car. */
    private static final int PARKED_STEPS = 60;

    private static final int BLOCK = 5;
    private static final int FEWEST_QUIET_BLOCKS = 4;
    private static final double DEADBAND_V = 0.012;
    private static final double MOST_RISE_V = 0.12;
    /** A battery left alone falls below this within seconds, V (common practice). */
    private static final double RELAXING_BELOW_V = 13.6;
    /** Least step down when a charging source leaves, V (ours). */
    private static final double LEFT_V = 0.15;
    /** A step this far down is a source that left, whatever is left of its charge, V (ours). */
    private static final double FAR_V = 0.6;

    private static final double MOST_NOISE_V = 0.03;

    private static final int FEWEST_QUIET_STEPS = 12;
    /** Nobody starts an engine to stop it sooner, steps (ours). */
    private static final int SHORTEST_RUN_STEPS = 60;

    private static final int BACK_STEPS = 20;
    private static final double MOST_ROUGH_V = 0.3;
    private static final double QUIET_FLOOR_V = 0.002;
    private static final double USUAL_QUIET_V = 0.004;
    private static final double STEP_DOWN_V = 0.08;

    private Engine() {}

    /**
     * @param grid 1 s grid
     * @param starts the starts found in it
     * @return for each step, whether the engine runs
     */
    public static boolean[] running(Grid grid, List<Start> starts) {
        return running(grid, starts, 1);
    }

    /**
     * @param grid 1 s grid
     * @param starts the starts found in it
     * @param method 1: steps and quiet of the voltage, 2: {@link EngineChain}
     * @return for each step, whether the engine runs
     */
    public static boolean[] running(Grid grid, List<Start> starts, int method) {
        double[] rpm = grid.held(Channel.ENGINE_RPM, rpmDelay(grid, starts));
        boolean told = rpm != null && Robust.count(rpm) > grid.steps() / 10;
        if (told) {
            return fromSpeed(grid, rpm, starts);
        }
        return method == 1 ? fromVoltage(grid, starts) : EngineChain.running(grid, starts);
    }

    private static boolean[] fromSpeed(Grid grid, double[] rpm, List<Start> starts) {
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
    private static double rpmDelay(Grid grid, List<Start> starts) {
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

    private static boolean[] fromVoltage(Grid grid, List<Start> starts) {
        boolean[] on = new boolean[grid.steps()];
        if (starts.isEmpty()) {
            double high = Robust.quantile(grid.voltage(), 0.9);
            Arrays.fill(on, high > ONLY_CHARGED_V);
            return on;
        }
        int first = grid.stepOf(starts.get(0).fromS());
        double quiet = alreadyRan(grid, first) ? USUAL_QUIET_V : restQuiet(grid.voltage(), first);
        for (int i = 0; i < starts.size(); i++) {
            int from = grid.stepOf(starts.get(i).toS()) + 1;
            boolean last = i + 1 == starts.size();
            int next = last ? grid.steps() : grid.stepOf(starts.get(i + 1).fromS());
            int off = last ? finalStop(grid, from, quiet) : stopBefore(grid, from, next, quiet);
            Arrays.fill(on, Math.min(from, off), off, true);
        }
        if (alreadyRan(grid, first)) {
            Arrays.fill(on, 0, stopBefore(grid, 0, first, quiet), true);
        }
        return on;
    }

    private static boolean alreadyRan(Grid grid, int first) {
        double[] before = Arrays.copyOf(grid.voltage(), first);
        return first > 20 && Robust.quantile(before, 0.7) > ONLY_CHARGED_V;
    }

    /** Where the engine stopped before a restart: the best single step down in the minutes before it. */
    private static int stopBefore(Grid grid, int from, int restart, double restQuiet) {
        double[] speed = grid.held(Channel.SPEED, 0);
        if (speed != null && Robust.count(speed) > grid.steps() / 10) {
            int k = restart - 1;
            while (k > from && !(speed[k] > 2)) {
                k--;
            }
            from = Math.max(from, k);
        }
        int relaxing = relaxingTail(grid.voltage(), from, restart, restQuiet);
        if (relaxing >= 0) {
            return relaxing;
        }
        int quiet = quietTail(grid.voltage(), from, restart, restQuiet);
        if (quiet >= 0 && restart - quiet >= PARKED_STEPS) {
            return quiet;
        }
        int earliest = Math.max(from, restart - LONGEST_STOP_STEPS);
        int split = bestStepDown(grid.voltage(), earliest, restart);
        return split >= 0 ? split : Math.max(from, restart - 10);
    }

    /** Where the voltage leaves the running engine for good; the end of the grid where it does not. */
    private static int finalStop(Grid grid, int from, double restQuiet) {
        double[] v = grid.voltage();
        int n = grid.steps();
        if (n - from < 40) {
            return n;
        }
        int relaxing = relaxingTail(v, from, n, restQuiet);
        if (relaxing >= 0) {
            return relaxing;
        }
        int split = quietTail(v, from, n, restQuiet);
        if (split < 0 || n - split < FEWEST_QUIET_STEPS) {
            return n;
        }
        return split;
    }

    /**
     * Where a charged battery was left alone: the first step down after which the voltage only sinks, as surface charge
     * does; -1 where there is none. Loads come and go while an engine runs, so there it rises again.
     */
    private static int relaxingTail(double[] v, int from, int to, double restQuiet) {
        int blocks = (to - from) / BLOCK;
        double[] level = new double[Math.max(0, blocks)];
        for (int b = 0; b < blocks; b++) {
            int end = to - (blocks - 1 - b) * BLOCK;
            level[b] = Robust.median(Arrays.copyOfRange(v, end - BLOCK, end));
        }
        double rise = 0;
        double deadband = DEADBAND_V + Math.min(MOST_NOISE_V, restQuiet);
        int first = -1;
        for (int b = blocks - 2; b > SHORTEST_RUN_STEPS / BLOCK; b--) {
            double up = level[b + 1] - level[b];
            rise += up > deadband ? up : 0;
            if (rise > MOST_RISE_V) {
                break;
            }
            double left = level[b - 2] - level[b];
            boolean low = level[b] < RELAXING_BELOW_V || left > FAR_V;
            if (low && blocks - b >= FEWEST_QUIET_BLOCKS && left > LEFT_V) {
                first = b;
            }
        }
        if (first < 0) {
            return -1;
        }
        int end = to - (blocks - 1 - first) * BLOCK;
        int step = bestStepDown(v, Math.max(from, end - 4 * BLOCK), end);
        return step >= 0 ? step : end - BLOCK;
    }

    /**
     * Where the voltage turns from rough to quiet for good: the split of its bends (second differences, which a smooth
     * relaxation does not have), taken as Laplace distributed, with the highest likelihood; -1 where the tail is not
     * clearly quieter. The engine stopped at the step down just before it.
     */
    private static int quietTail(double[] v, int from, int to, double restQuiet) {
        double[] smooth = Robust.medianOfThree(v);
        int n = to - from;
        double[] sum = new double[Math.max(0, n) + 1];
        for (int k = 0; k < n; k++) {
            sum[k + 1] = sum[k] + bend(smooth, from + k);
        }
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int k = Math.min(SHORTEST_RUN_STEPS, n / 2); k < n - 5; k++) {
            double before = sum[k] / k + QUIET_FLOOR_V;
            double after = (sum[n] - sum[k]) / (n - k) + QUIET_FLOOR_V;
            double cost = k * StrictMath.log(before) + (n - k) * StrictMath.log(after);
            if (after < 0.6 * before && after - QUIET_FLOOR_V < 1.5 * restQuiet + 0.002 && cost < least) {
                least = cost;
                best = from + k;
            }
        }
        boolean low = best >= 0 && Robust.quantile(Arrays.copyOfRange(v, (best + to) / 2, to), 0.9) < ONLY_CHARGED_V;
        if (!low) {
            return -1;
        }
        int step = bestStepDown(v, Math.max(from, best - BACK_STEPS), Math.min(to, best + BACK_STEPS));
        return step >= 0 ? step : best;
    }

    private static double bend(double[] v, int k) {
        if (k < 1 || k + 1 >= v.length) {
            return 0;
        }
        double d = Math.abs(v[k + 1] - 2 * v[k] + v[k - 1]);
        return Double.isNaN(d) ? 0 : Math.min(d, MOST_ROUGH_V);
    }

    /** Mean bend before the first start, V; a guess where the recording has no such rest. */
    private static double restQuiet(double[] v, int first) {
        if (first < FEWEST_QUIET_STEPS) {
            return USUAL_QUIET_V;
        }
        double[] smooth = Robust.medianOfThree(v);
        double sum = 0;
        for (int k = 1; k < first - 2; k++) {
            sum += bend(smooth, k);
        }
        return sum / (first - 3);
    }

    /** Split of {@code v[from..to)} into a higher and a lower part with the least squared error; -1 where none is 80 mV. */
    private static int bestStepDown(double[] v, int from, int to) {
        int best = -1;
        double most = 0;
        double all = 0;
        int n = 0;
        for (int k = from; k < to; k++) {
            if (!Double.isNaN(v[k])) {
                all += v[k];
                n++;
            }
        }
        double left = 0;
        int m = 0;
        for (int k = from; k < to - 2; k++) {
            if (Double.isNaN(v[k])) {
                continue;
            }
            left += v[k];
            m++;
            if (m < 2 || n - m < 2) {
                continue;
            }
            double drop = left / m - (all - left) / (n - m);
            double gain = drop * drop * m * (n - m) / n;
            if (drop > STEP_DOWN_V && gain > most) {
                most = gain;
                best = k + 1;
            }
        }
        return best;
    }
}
