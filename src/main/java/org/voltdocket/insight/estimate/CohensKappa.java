package org.voltdocket.insight.estimate;

import java.util.Optional;
import org.voltdocket.kernel.Interval;

/**
 * Agreement of two who put the same things into the same categories, beyond what chance alone gives (J. Cohen, 1960, Educational
 * and Psychological Measurement 20, 37-46), with its large-sample interval (J. L. Fleiss, J. Cohen, B. S. Everitt, 1969,
 * Psychological Bulletin 72, 323-327).
 *
 * @param count things that both judged
 * @param observed share they agree on, 0 to 1
 * @param expected share they would agree on by chance, 0 to 1
 * @param kappa 1 for full agreement, 0 for no more than chance; the interval ends at -1 and 1
 */
public record CohensKappa(long count, double observed, double expected, Interval kappa) {

    /**
     * @param table things by the category of the first (rows) and of the second (columns), in the same order
     * @return empty where there is nothing, or both put everything into one and the same category: then agreement says nothing
     * @throws IllegalArgumentException if the table is not square or a count is negative
     */
    public static Optional<CohensKappa> of(long[][] table) {
        int k = table.length;
        long n = 0;
        for (long[] row : table) {
            if (row.length != k) {
                throw new IllegalArgumentException("the table has " + k + " rows and a row of " + row.length);
            }
            for (long cell : row) {
                if (cell < 0) {
                    throw new IllegalArgumentException("a count is not negative: " + cell);
                }
                n += cell;
            }
        }
        double[] rows = new double[k];
        double[] columns = new double[k];
        double observed = 0;
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                rows[i] += (double) table[i][j] / n;
                columns[j] += (double) table[i][j] / n;
            }
            observed += (double) table[i][i] / n;
        }
        double expected = 0;
        for (int i = 0; i < k; i++) {
            expected += rows[i] * columns[i];
        }
        if (n == 0 || expected > 1 - 1e-12) {
            return Optional.empty();
        }
        double value = (observed - expected) / (1 - expected);
        double half = Interval.Z95 * Math.sqrt(variance(table, n, rows, columns, observed, expected));
        Interval interval = new Interval(value, Math.max(-1, value - half), Math.min(1, value + half));
        return Optional.of(new CohensKappa(n, observed, expected, interval));
    }

    private static double variance(
            long[][] table, long n, double[] rows, double[] columns, double observed, double expected) {
        double agreeing = 0;
        double apart = 0;
        for (int i = 0; i < rows.length; i++) {
            for (int j = 0; j < rows.length; j++) {
                double p = (double) table[i][j] / n;
                if (i == j) {
                    double part = 1 - expected - (rows[i] + columns[i]) * (1 - observed);
                    agreeing += p * part * part;
                } else {
                    double margins = columns[i] + rows[j];
                    apart += p * margins * margins;
                }
            }
        }
        double last = observed * expected - 2 * expected + observed;
        double sum = agreeing + (1 - observed) * (1 - observed) * apart - last * last;
        return Math.max(0, sum) / (n * Math.pow(1 - expected, 4));
    }
}
