package org.voltdocket.diagnosis.regime;

import java.util.Arrays;
import java.util.List;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * Whether the engine runs, as a hidden Markov model of two states over the steps of a grid, from the measured voltage and,
 * if recorded, currents, the road speed and the driver's marks.
 *
 * <p>Each feature of {@link Roughness} is taken as exponentially distributed about one scale while the car is parked, and as
 * a mixture of that and a wider one while the engine runs, for a running engine may be calm and a parked car is never
 * rough. Both scales are learnt from the recording itself. The level tells only what physics forbids: a battery left alone
 * does not stay at charging voltage. An engine comes on with a start, else hardly ever; it goes off at any time, most often
 * with a step. The most probable sequence is found by dynamic programming (A. J. Viterbi, 1967), the scale of the running
 * engine is taken from it anew, and the sequence is found again (segmental k-means, a variant of L. R. Rabiner, 1989).
 */
final class EngineStateModel {

    private static final int OFF = 0;
    private static final int ON = 1;

    private static final int ROUNDS = 4;

    /** An engine is stopped and started about every 15 minutes, s (ours). */
    private static final double STOPS_EVERY_S = 1000;
    /** Log-probability that a recording with fast rows does not show a start (ours). */
    private static final double LOG_STARTS_UNSEEN = -80;
    /** A slower recording may miss a start, s between rows (ours), and misses most from {@link #MISSES_S} on. */
    private static final double SLOW_S = 0.3;

    private static final double MISSES_S = 3;
    /** What an unseen start has against it beside its rarity, nats (ours). */
    private static final double UNSEEN_NATS = 2;
    /**
     * A driver's mark may come this much early or late, s, and holds for this long before and after: what was started stood
     * before, what was stopped ran (ours).
     */
    private static final double MARK_LATE_S = 6;

    private static final double MARK_HOLDS_S = 10;
    /** Share of the time that a running engine is as calm as a parked car, by feature (ours). */
    private static final double[] CALM = {0.25, 0.6, 0.6, 0.6, 0.6};
    /** The same with an instrument of this resolution or coarser, V: it hides what is small (ours). */
    private static final double CALM_COARSE = 0.95;

    private static final double COARSE_V = 0.05;
    private static final int VOLTAGE_FEATURES = 3;
    /** Most that the step down of a stop may say, nats (ours). */
    private static final double MOST_STEP_NATS = 6;
    /** Rows this much further apart than steps leave steps without a row of their own (ours). */
    private static final double FEW_ROWS = 1.5;
    /** Seconds about a start that say nothing of roughness. */
    private static final int ABOUT_START = 4;

    /** What a prior scale weighs, in steps. */
    private static final double PRIOR_STEPS = 10;

    /** Nothing told step by step may outweigh this, nats (ours): the shape of the distributions is not known. */
    private static final double MOST_NATS = 2;

    /** Charging sources hold more than this, and no resting battery does for long, V (common practice). */
    private static final double ONLY_CHARGED_V = 13.3;

    private static final double SURELY_CHARGED_V = 13.5;
    /** A battery left alone falls below this within seconds, V (common practice). */
    private static final double RELAXING_BELOW_V = 13.7;
    /** What a step above each of the two says against a parked car, nats (ours): surface charge holds up for minutes. */
    private static final double SURFACE_NATS = 0.04;

    private static final double RELAXING_NATS = 0.5;
    /** Scale of the step that a stop brings, V (ours). */
    private static final double STOP_STEP_V = 0.3;
    /** Scale of the level's change from step to step with nothing happening, V (ours). */
    private static final double CALM_STEP_V = 0.03;

    private final Grid grid;
    private final List<EngineStart> starts;
    private final double[] level;
    private final Roughness rough;
    private final double[][] scale;
    private final boolean[] surelyOff;
    private final boolean[] surelyOn;
    private final double[] runs;
    private final double[] calm = CALM.clone();

    private EngineStateModel(Grid grid, List<EngineStart> starts) {
        this.grid = grid;
        this.starts = starts;
        this.level = Robust.medianOfThree(grid.voltage());
        this.rough = Roughness.of(grid);
        this.runs = RunningEvidence.of(grid, level, starts);
        double coarse = Math.min(
                1, Robust.resolution(grid.recording().channel(Channel.MEASURED_V), Roughness.COARSEST_V) / COARSE_V);
        for (int f = 0; f < VOLTAGE_FEATURES; f++) {
            calm[f] += (CALM_COARSE - calm[f]) * coarse * coarse;
        }
        this.scale = new double[2][rough.size.length];
        this.surelyOff = new boolean[grid.steps()];
        this.surelyOn = new boolean[grid.steps()];
    }

    /**
     * @param grid any grid; where its rows are further apart than its steps, the model takes steps of one row
     * @param starts the starts found in it
     * @return for each step, whether the engine runs
     */
    static boolean[] running(Grid grid, List<EngineStart> starts) {
        if (grid.rowS() < FEW_ROWS * grid.stepS()) {
            return new EngineStateModel(grid, starts).running();
        }
        Grid coarse = Grid.of(grid.recording(), grid.rowS());
        boolean[] by = new EngineStateModel(coarse, starts).running();
        boolean[] out = new boolean[grid.steps()];
        for (int k = 0; k < out.length; k++) {
            out[k] = by[coarse.stepOf(grid.timeOf(k) + 0.5 * grid.stepS())];
        }
        return out;
    }

    private boolean[] running() {
        know();
        boolean[] on = guess();
        for (int round = 0; round < ROUNDS; round++) {
            learn(on);
            boolean[] next = best();
            if (Arrays.equals(next, on)) {
                break;
            }
            on = next;
        }
        return on;
    }

    /** Steps whose state a start or the road speed settles. */
    private void know() {
        for (EngineStart start : starts) {
            int from = grid.stepOf(start.fromS());
            int to = grid.stepOf(start.toS());
            Arrays.fill(surelyOff, Math.max(0, from - 1), to + 1, true);
            Arrays.fill(surelyOn, Math.min(grid.steps(), to + 1), Math.min(grid.steps(), to + 3), true);
        }
        for (Recording.Mark mark : grid.recording().marks()) {
            int at = grid.stepOf(mark.atS());
            boolean stopped = EngineMarks.stopped(mark);
            if (stopped || EngineMarks.started(mark)) {
                int from = Math.min(grid.steps(), at + steps(MARK_LATE_S));
                int to = Math.max(0, at - steps(MARK_LATE_S));
                Arrays.fill(
                        stopped ? surelyOff : surelyOn, from, Math.min(grid.steps(), from + steps(MARK_HOLDS_S)), true);
                Arrays.fill(stopped ? surelyOn : surelyOff, Math.max(0, to - steps(MARK_HOLDS_S)), to, true);
            }
        }
        double[] speed = grid.held(Channel.SPEED, 0);
        for (int k = 0; speed != null && k < speed.length; k++) {
            surelyOn[k] |= speed[k] > 2;
        }
        for (int k = 0; k < grid.steps(); k++) {
            surelyOn[k] &= !surelyOff[k];
        }
    }

    /** Off before the first start and on from there; where there is none, on while the level is one of charging. */
    private boolean[] guess() {
        boolean[] on = new boolean[grid.steps()];
        if (!starts.isEmpty()) {
            Arrays.fill(on, Math.min(on.length, grid.stepOf(starts.get(0).toS()) + 1), on.length, true);
        }
        for (int k = 0; k < on.length; k++) {
            on[k] |= level[k] > SURELY_CHARGED_V;
        }
        return on;
    }

    private int steps(double seconds) {
        return (int) Math.ceil(seconds / grid.stepS());
    }

    private boolean aboutStart(int step) {
        for (EngineStart start : starts) {
            if (step >= grid.stepOf(start.fromS()) - ABOUT_START && step <= grid.stepOf(start.toS()) + ABOUT_START) {
                return true;
            }
        }
        return false;
    }

    /**
     * Scales of each state. The parked car is learnt from before the first start and from the calmest stretches alone, for a
     * running engine taken for a parked one would make the two alike; the running one from the steps that have it, and it is
     * nowhere smoother than the parked one.
     */
    private void learn(boolean[] on) {
        int first = starts.isEmpty() ? 0 : grid.stepOf(starts.get(0).fromS()) - 2;
        boolean ran = first > 20 && Robust.quantile(Arrays.copyOf(level, first), 0.7) > ONLY_CHARGED_V;
        for (int f = 0; f < rough.size.length; f++) {
            double[] before = ran || first < 1 ? new double[0] : Arrays.copyOf(rough.size[f], first);
            double calm = Robust.quantile(blocks(rough.size[f]), 0.1);
            calm = Double.isNaN(calm) ? 0 : calm;
            int known = Robust.count(before);
            double off = known == 0 ? calm : (known * Robust.mean(before) + PRIOR_STEPS * calm) / (known + PRIOR_STEPS);
            scale[OFF][f] = Math.max(off, rough.least[f]);
            double sum = 0;
            int count = 0;
            for (int k = 0; k < on.length; k++) {
                if (on[k] && rough.weight[f][k] > 0 && !aboutStart(k)) {
                    sum += rough.size[f][k];
                    count++;
                }
            }
            double usual = 2 * scale[OFF][f];
            scale[ON][f] = Math.max(scale[OFF][f], (sum + PRIOR_STEPS * usual) / (count + PRIOR_STEPS));
        }
    }

    private static double[] blocks(double[] values) {
        int size = 30;
        double[] out = new double[values.length / size + 1];
        for (int b = 0; b < out.length; b++) {
            out[b] = Robust.mean(Arrays.copyOfRange(values, b * size, Math.min(values.length, (b + 1) * size)));
        }
        return out;
    }

    private boolean[] best() {
        int n = grid.steps();
        double rare = StrictMath.log(Math.min(0.5, grid.stepS() / STOPS_EVERY_S));
        double rowS =
                grid.recording().durationS() / Math.max(1, grid.recording().rows() - 1);
        double unseen =
                rowS <= SLOW_S ? LOG_STARTS_UNSEEN : rare - UNSEEN_NATS + StrictMath.log(Math.min(1, rowS / MISSES_S));
        boolean[][] fromOther = new boolean[2][n];
        double[] score = {told(0, OFF), told(0, ON)};
        for (int k = 1; k < n; k++) {
            double step = step(k);
            double stopped = score[ON] + rare + nats(Math.abs(step));
            double started = score[OFF] + unseen + nats(Math.max(0, step));
            boolean known = surelyOn[k] && surelyOff[k - 1];
            fromOther[OFF][k] = stopped > score[OFF];
            fromOther[ON][k] = known || started > score[ON];
            double off = Math.max(score[OFF], stopped) + told(k, OFF);
            double on = (known ? score[OFF] : Math.max(score[ON], started)) + told(k, ON);
            score[OFF] = off;
            score[ON] = on;
        }
        boolean[] out = new boolean[n];
        int state = score[ON] > score[OFF] ? ON : OFF;
        for (int k = n - 1; k >= 0; k--) {
            out[k] = state == ON;
            state = fromOther[state][k] ? 1 - state : state;
        }
        return out;
    }

    /** By how much the level is higher after a step than before it, V; NaN at the ends. */
    private double step(int k) {
        if (k < 2 || k + 2 >= level.length) {
            return Double.NaN;
        }
        return 0.5 * (level[k + 1] + level[k + 2] - level[k - 1] - level[k - 2]);
    }

    /** Log-likelihood of the change that the level takes where an engine starts or stops, against none. */
    private static double nats(double size) {
        if (Double.isNaN(size)) {
            return 0;
        }
        double told = StrictMath.log(CALM_STEP_V / STOP_STEP_V) + size / CALM_STEP_V - size / STOP_STEP_V;
        return Math.min(MOST_STEP_NATS, told);
    }

    /** Log-likelihood of what a step shows, against that of the parked car. */
    private double told(int k, int state) {
        if (surelyOn[k] && state == OFF || surelyOff[k] && state == ON) {
            return -1e6;
        }
        double sum = state == ON ? runs[k] : 0;
        for (int f = 0; f < rough.size.length; f++) {
            if (rough.weight[f][k] > 0) {
                double x = rough.size[f][k];
                double rise = x / scale[OFF][f] - x / scale[ON][f];
                double odds =
                        calm[f] + (1 - calm[f]) * scale[OFF][f] / scale[ON][f] * StrictMath.exp(Math.min(50, rise));
                double ratio = Math.min(MOST_NATS, rough.weight[f][k] * StrictMath.log(odds));
                sum += state == ON ? ratio : 0;
            }
        }
        if (state == OFF && level[k] > ONLY_CHARGED_V) {
            double nats = level[k] > RELAXING_BELOW_V ? RELAXING_NATS : SURFACE_NATS;
            sum -= Math.min(MOST_NATS, nats * grid.stepS());
        }
        return sum;
    }
}
