package org.voltdocket.diagnosis.signal;

import java.util.Arrays;

/** Order statistics without sorting everything: Hoare's selection, median of three, sorting what goes badly. */
final class Selection {

    private static final int SMALL = 24;

    private Selection() {}

    /**
     * Puts the value that sorting would put at {@code k} there, none greater before it and none less behind it.
     *
     * @param values free of NaN in its first {@code n}
     * @param k 0 to n - 1
     */
    static double of(double[] values, int n, int k) {
        int left = 0;
        int right = n - 1;
        int rounds = 2 * (32 - Integer.numberOfLeadingZeros(n));
        while (right - left > SMALL && rounds-- > 0) {
            double pivot = middle(values[left], values[(left + right) >>> 1], values[right]);
            int i = left;
            int j = right;
            while (i <= j) {
                while (values[i] < pivot) {
                    i++;
                }
                while (values[j] > pivot) {
                    j--;
                }
                if (i <= j) {
                    double kept = values[i];
                    values[i++] = values[j];
                    values[j--] = kept;
                }
            }
            if (k <= j) {
                right = j;
            } else if (k >= i) {
                left = i;
            } else {
                return values[k];
            }
        }
        sort(values, left, right + 1);
        return values[k];
    }

    /** The least value behind {@code k}, after {@link #of}: what sorting would put there. */
    static double behind(double[] values, int n, int k) {
        double least = values[k + 1];
        for (int i = k + 2; i < n; i++) {
            least = Math.min(least, values[i]);
        }
        return least;
    }

    /** Sorts {@code values[from..to)}; quick where there are only a few. */
    static void sort(double[] values, int from, int to) {
        if (to - from > 2 * SMALL) {
            Arrays.sort(values, from, to);
            return;
        }
        for (int i = from + 1; i < to; i++) {
            double v = values[i];
            int j = i - 1;
            while (j >= from && values[j] > v) {
                values[j + 1] = values[j--];
            }
            values[j + 1] = v;
        }
    }

    private static double middle(double a, double b, double c) {
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    }
}
