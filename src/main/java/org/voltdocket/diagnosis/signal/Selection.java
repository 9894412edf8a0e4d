package org.voltdocket.diagnosis.signal;

import java.util.Arrays;

/**
 * Order statistics without sorting everything: many values are first narrowed to those of one bucket of even width, by counting;
 * then Hoare's selection, median of three, sorting what goes badly.
 */
final class Selection {

    private static final int SMALL = 24;
    /** From here on counting is quicker than comparing, whose branches nobody can foretell. */
    private static final int MANY = 512;

    private static final int BUCKETS = 512;

    private Selection() {}

    /**
     * What sorting would put at {@code k} and behind it, mixed: {@code (1 - share)} of the one and {@code share} of the other.
     *
     * @param values free of NaN in its first {@code n}, which are written over
     * @param k 0 to n - 1; the last has nothing behind it and stands alone
     */
    static double between(double[] values, int n, int k, double share) {
        if (n < MANY) {
            return mixed(values, n, k, share);
        }
        double least = values[0];
        double most = values[0];
        for (int i = 1; i < n; i++) {
            least = Math.min(least, values[i]);
            most = Math.max(most, values[i]);
        }
        double perUnit = (BUCKETS - 1) / (most - least);
        if (!(perUnit > 0 && perUnit < Double.POSITIVE_INFINITY)) {
            return mixed(values, n, k, share);
        }
        int[] counts = new int[BUCKETS];
        for (int i = 0; i < n; i++) {
            counts[(int) ((values[i] - least) * perUnit)]++;
        }
        int first = bucketOf(counts, k);
        int last = bucketOf(counts, Math.min(k + 1, n - 1));
        int kept = 0;
        for (int i = 0; i < n; i++) {
            double value = values[i];
            int bucket = (int) ((value - least) * perUnit);
            values[kept] = value;
            kept += bucket == first | bucket == last ? 1 : 0;
        }
        int passed = Arrays.stream(counts, 0, first).sum();
        return mixed(values, kept, k - passed, share);
    }

    private static double mixed(double[] values, int n, int k, double share) {
        double low = of(values, n, k);
        double high = k + 1 < n ? behind(values, n, k) : low;
        return low + share * (high - low);
    }

    private static int bucketOf(int[] counts, int rank) {
        int bucket = 0;
        int passed = counts[0];
        while (passed <= rank) {
            passed += counts[++bucket];
        }
        return bucket;
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
