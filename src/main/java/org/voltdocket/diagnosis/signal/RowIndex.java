package org.voltdocket.diagnosis.signal;

/**
 * Which rows of a time column belong to each step of a grid. Each bound is looked for where it lies if the step has as
 * many rows as the one before, so an evenly sampled recording costs a comparison or two a step instead of one a row; the
 * answer is that of counting row by row.
 */
final class RowIndex {

    private RowIndex() {}

    /**
     * By step, how many rows are not later than its centre.
     *
     * @param time strictly increasing, s
     * @param delayS what the centres are later, s
     */
    static int[] upToCentres(double[] time, double startS, double stepS, int steps, double delayS) {
        int[] out = new int[steps];
        int row = 0;
        int ahead = 0;
        for (int k = 0; k < steps; k++) {
            double centre = startS + (k + 0.5) * stepS + delayS;
            int from = row;
            row = Math.min(time.length, from + ahead);
            while (row > from && time[row - 1] > centre) {
                row--;
            }
            while (row < time.length && time[row] <= centre) {
                row++;
            }
            ahead = row - from;
            out[k] = row;
        }
        return out;
    }

    /** By step, the first row behind it; the last step has all that are left. */
    static int[] ends(double[] time, double startS, double stepS, int steps) {
        int[] out = new int[steps];
        int row = 0;
        int ahead = 0;
        for (int k = 0; k + 1 < steps; k++) {
            int from = row;
            row = Math.min(time.length, from + ahead);
            while (row > from && (int) ((time[row - 1] - startS) / stepS) > k) {
                row--;
            }
            while (row < time.length && (int) ((time[row] - startS) / stepS) <= k) {
                row++;
            }
            ahead = row - from;
            out[k] = row;
        }
        out[steps - 1] = time.length;
        return out;
    }
}
