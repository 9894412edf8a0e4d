package org.voltdocket.diagnosis.regime;

import java.util.ArrayList;
import java.util.List;

/**
 * Where the level of a series changes.
 *
 * <p>Optimal partitioning with the pruning of PELT (Killick, Fearnhead and Eckley, 2012): exact minimum of the squared
 * error about each segment's mean plus a penalty for each change.
 */
public final class ChangePoints {

    private ChangePoints() {}

    /**
     * @param values free of NaN
     * @param penalty cost of one change, in the square of the values' unit; positive
     * @return indices where a new segment starts, increasing, without 0
     */
    public static int[] optimalPartition(double[] values, double penalty) {
        int n = values.length;
        double[] sum = new double[n + 1];
        double[] square = new double[n + 1];
        double shift = n == 0 ? 0 : values[0];
        for (int i = 0; i < n; i++) {
            double v = values[i] - shift;
            sum[i + 1] = sum[i] + v;
            square[i + 1] = square[i] + v * v;
        }
        double[] best = new double[n + 1];
        int[] from = new int[n + 1];
        best[0] = -penalty;
        List<Integer> open = new ArrayList<>();
        open.add(0);
        for (int end = 1; end <= n; end++) {
            best[end] = Double.POSITIVE_INFINITY;
            for (int start : open) {
                double cost = best[start] + error(sum, square, start, end) + penalty;
                if (cost < best[end]) {
                    best[end] = cost;
                    from[end] = start;
                }
            }
            int limit = end;
            open.removeIf(start -> best[start] + error(sum, square, start, limit) > best[limit]);
            open.add(end);
        }
        return walkBack(from, n);
    }

    /** Squared error of {@code values[start..end)} about their mean. */
    private static double error(double[] sum, double[] square, int start, int end) {
        double s = sum[end] - sum[start];
        return square[end] - square[start] - s * s / (end - start);
    }

    private static int[] walkBack(int[] from, int n) {
        List<Integer> starts = new ArrayList<>();
        for (int end = n; end > 0 && from[end] > 0; end = from[end]) {
            starts.add(0, from[end]);
        }
        return starts.stream().mapToInt(Integer::intValue).toArray();
    }
}
