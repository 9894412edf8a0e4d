package org.voltdocket.diagnosis.signal;

import java.util.Arrays;

/** Order statistics without sorting everything: Hoare's selection by Lomuto's partition, sorting what goes badly. */
final class Selection {

    private static final int SMALL = 24;

    private Selection() {}

    /**
     * What sorting would put at {@code k} and behind it, mixed: {@code (1 - share)} of the one and {@code share} of the other.
     *
     * @param values free of NaN in its first {@code n}, which are put into another order
     * @param k 0 to n - 1; the last has nothing behind it and stands alone
     */
    static double between(double[] values, int n, int k, double share) {
        double low = of(values, n, k);
        double high = k + 1 < n ? behind(values, n, k) : low;
        return low + share * (high - low);
    }

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
            double pivot = pivot(values, left, right);
            int less = lessFirst(values, left, right, pivot);
            if (k < less) {
                right = less - 1;
            } else if (less - left > (right - left) >> 2) {
                left = less;
            } else {
                int more = equalFirst(values, less, right, pivot);
                if (k < more) {
                    return values[k];
                }
                left = more;
            }
        }
        sort(values, left, right + 1);
        return values[k];
    }

    /** Puts what is less than the pivot first, without a branch, for none could foretell it; where the others begin. */
    private static int lessFirst(double[] values, int left, int right, double pivot) {
        int next = left;
        for (int j = left; j <= right; j++) {
            double v = values[j];
            values[j] = values[next];
            values[next] = v;
            next += v < pivot ? 1 : 0;
        }
        return next;
    }

    /** As {@link #lessFirst}, of what is not less than the pivot: what equals it comes first. */
    private static int equalFirst(double[] values, int left, int right, double pivot) {
        int next = left;
        for (int j = left; j <= right; j++) {
            double v = values[j];
            values[j] = values[next];
            values[next] = v;
            next += v <= pivot ? 1 : 0;
        }
        return next;
    }

    private static double pivot(double[] values, int left, int right) {
        return middle(values[left], values[(left + right) >>> 1], values[right]);
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
