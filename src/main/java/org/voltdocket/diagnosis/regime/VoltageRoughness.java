package org.voltdocket.diagnosis.regime;

import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * Roughness of the measured voltage at each step of a grid, on three time scales. A battery left alone relaxes
 * smoothly, whatever its level; a running engine brings ripple, switched loads and a source that follows them (common
 * practice). Each feature is a size of change, V, zero or more, NaN where nothing tells it.
 */
final class VoltageRoughness {

    /** Half of the distance over which slow bends are taken, steps. */
    private static final int SLOW_STEPS = 5;
    /** A change beyond this is an event of its own and counts no further, V (ours). */
    private static final double MOST_V = 0.3;
    /** No more samples of one step than this count as told apart (ours). */
    private static final int MOST_PAIRS = 8;

    /** Mean size of a calm value's changes in steps of the instrument (ours): one that lies on a border toggles. */
    private static final double DITHER = 0.2;

    /** Share of a step's log-likelihood that each feature contributes, for its values depend on each other (ours). */
    private static final double[] TRUST = {0.30, 0.50, 0.15};

    /** By feature and step. */
    final double[][] size;
    /** How many independent values each feature of a step stands for. */
    final double[][] weight;

    /** Least size that the instrument's steps let any feature have on average, V. */
    final double least;

    private VoltageRoughness(double[][] size, double[][] weight, double least) {
        this.size = size;
        this.weight = weight;
        this.least = least;
    }

    static VoltageRoughness of(Grid grid) {
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
        return new VoltageRoughness(
                size, weight, DITHER * quantum(grid.recording().channel(Channel.MEASURED_V)));
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

    /** The instrument's step, V: the smallest change that is common among neighbouring samples. */
    private static double quantum(float[] v) {
        double[] changes = new double[Math.min(v.length, 4000)];
        for (int i = 1; i < changes.length; i++) {
            double change = Math.abs(v[i] - v[i - 1]);
            changes[i] = change > 1e-4 ? change : Double.NaN;
        }
        changes[0] = Double.NaN;
        double quantum = Robust.quantile(changes, 0.05);
        return Double.isNaN(quantum) ? 0 : quantum;
    }

    /** Size of the second difference over a distance, which a smooth relaxation hardly has. */
    private static double bend(double[] v, int k, int distance) {
        if (k < distance || k + distance >= v.length) {
            return Double.NaN;
        }
        return Math.min(MOST_V, Math.abs(v[k + distance] - 2 * v[k] + v[k - distance]));
    }
}
