package org.voltdocket.diagnosis.regime;

import java.util.Arrays;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * Roughness at each step of a grid: of the measured voltage on three time scales, and of the measured and the reported current
 * where they were recorded. A battery left alone relaxes smoothly, whatever its level, and takes a steady current; a running
 * engine brings ripple, switched loads and a source that follows them (common practice). Each feature is a size of change, V or
 * A, zero or more, NaN where nothing tells it.
 */
final class Roughness {

    /** Half of the distance over which slow bends are taken, steps. */
    private static final int SLOW_STEPS = 5;
    /** A change beyond this is an event of its own and counts no further, V (ours). */
    private static final double MOST_V = 0.3;
    /** No more samples of one step than this count as told apart (ours). */
    private static final int MOST_PAIRS = 8;

    /** Mean size of a calm value's changes in steps of the instrument (ours): one that lies on a border toggles. */
    private static final double DITHER = 0.2;

    /** Share of a step's log-likelihood that each feature contributes, for its values depend on each other (ours). */
    private static final double[] TRUST = {0.30, 0.50, 0.15, 0.30, 0.30};
    /** Least mean size of a calm value's changes, V or A (ours). */
    private static final double[] FLOOR = {0.0015, 0.0015, 0.0015, 0.08, 0.05};
    /** Coarsest resolutions in use, V and A (common practice). */
    static final double COARSEST_V = 0.1;

    private static final double COARSEST_A = 1;
    /** A change of a current beyond this is an event of its own, A (ours). */
    private static final double MOST_A = 10;

    /** By feature and step. */
    final double[][] size;
    /** How many independent values each feature of a step stands for. */
    final double[][] weight;

    /** By feature, the least size that a calm value has on average, V or A: what the instrument's steps make of it. */
    final double[] least;

    private Roughness(double[][] size, double[][] weight, double[] least) {
        this.size = size;
        this.weight = weight;
        this.least = least;
    }

    static Roughness of(Grid grid) {
        int n = grid.steps();
        double[][] size = new double[TRUST.length][n];
        double[][] weight = new double[TRUST.length][n];
        ripple(grid, size[0], weight[0]);
        double[] smooth = Robust.medianOfThree(grid.voltage());
        double[] slow = Robust.movingMean(smooth, SLOW_STEPS / 2);
        for (int k = 0; k < n; k++) {
            size[1][k] = bend(smooth, k, 1);
            size[2][k] = bend(slow, k, SLOW_STEPS);
            weight[1][k] = Double.isNaN(size[1][k]) ? 0 : TRUST[1];
            weight[2][k] = Double.isNaN(size[2][k]) ? 0 : TRUST[2];
        }
        double[] least = FLOOR.clone();
        double step = DITHER * Robust.resolution(grid.recording().channel(Channel.MEASURED_V), COARSEST_V);
        for (int f = 0; f < 3; f++) {
            least[f] += step;
        }
        current(grid.mean(Channel.MEASURED_A), Channel.MEASURED_A, grid, 3, size, weight, least);
        current(grid.held(Channel.REPORTED_A, 0), Channel.REPORTED_A, grid, 4, size, weight, least);
        return new Roughness(size, weight, least);
    }

    /** Changes of a current from step to step; nothing where it was not recorded. */
    private static void current(
            double[] amperes,
            Channel channel,
            Grid grid,
            int feature,
            double[][] size,
            double[][] weight,
            double[] least) {
        Arrays.fill(size[feature], Double.NaN);
        if (amperes == null) {
            return;
        }
        least[feature] += DITHER * Robust.resolution(grid.recording().channel(channel), COARSEST_A);
        for (int k = 1; k < amperes.length; k++) {
            size[feature][k] = Math.min(MOST_A, Math.abs(amperes[k] - amperes[k - 1]));
            weight[feature][k] = Double.isNaN(size[feature][k]) ? 0 : TRUST[feature];
        }
    }

    /** Mean size of the change from sample to sample within each step. */
    private static void ripple(Grid grid, double[] size, double[] weight) {
        Recording recording = grid.recording();
        double[] time = recording.timeS();
        float[] v = recording.channel(Channel.MEASURED_V);
        double step = grid.stepS();
        int[] ends = grid.ends();
        int row = 1;
        for (int k = 0; k < size.length; k++) {
            double sum = 0;
            int pairs = 0;
            for (; row < ends[k]; row++) {
                double change = Math.abs(v[row] - v[row - 1]);
                if (change >= 0 && time[row] - time[row - 1] < step) {
                    sum += Math.min(change, MOST_V);
                    pairs++;
                }
            }
            size[k] = pairs == 0 ? Double.NaN : sum / pairs;
            weight[k] = TRUST[0] * Math.min(MOST_PAIRS, pairs);
        }
    }

    /** Size of the second difference over a distance, which a smooth relaxation hardly has. */
    private static double bend(double[] v, int k, int distance) {
        if (k < distance || k + distance >= v.length) {
            return Double.NaN;
        }
        return Math.min(MOST_V, Math.abs(v[k + distance] - 2 * v[k] + v[k - distance]));
    }
}
