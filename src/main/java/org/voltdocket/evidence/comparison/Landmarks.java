package org.voltdocket.evidence.comparison;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * Distinctive places of an outline, described by numbers that a database index finds.
 *
 * <p>A landmark is a step whose voltage differs most from its surroundings. Seventy comparisons of the voltage before and
 * after it, one bit each, describe it. They are split into {@value #BANDS} numbers, so that a few bits changed by noise or
 * rounding leave at least one number unchanged (locality-sensitive hashing by banding: Indyk and Motwani, 1998;
 * landmarks with votes for a common offset: Wang, 2003).
 */
public final class Landmarks {

    /**
     * One number of one landmark.
     *
     * @param step where in the outline
     * @param code scale, band and bits, 0 or more
     */
    public record Code(int step, int code) {}

    static final int BANDS = 5;
    private static final int BITS = 14;
    /** Number of codes per scale; the codes of the scales follow each other. */
    public static final int CODES_OF_A_SCALE = BANDS << BITS;

    /** Most landmarks of an outline; the most distinctive ones are used. */
    private static final int MOST = 400;
    /** Least distance of two landmarks, steps. */
    private static final int ALONE = 4;
    /** Steps before and after that describe a landmark. */
    private static final int AROUND = 40;
    /** Less than this is noise and rounding, V (ours). */
    private static final double LEAST_V = 0.001;

    /** A smaller difference is chance, V; a band with more such comparisons than the next limit is not used. */
    private static final double TIE_V = 0.0002;

    private static final int MOST_TIES = 6;
    /** A band with fewer comparisons against the general rise or fall is not used. */
    private static final int PLAIN = 3;

    private static final int[][] PAIRS = pairs();

    private Landmarks() {}

    /** Codes of an outline in order of place, up to {@value #BANDS} for a landmark. */
    public static List<Code> of(VoltageOutline outline) {
        double[] course = outline.course();
        double[] wide = Robust.movingMean(outline.volts(), 2);
        List<Integer> places = new ArrayList<>();
        for (int k = AROUND; k + AROUND < course.length; k++) {
            if (standsOut(course, k) && whole(wide, k)) {
                places.add(k);
            }
        }
        places.sort(Comparator.comparingDouble((Integer k) -> -Math.abs(course[k]))
                .thenComparing(Comparator.naturalOrder()));
        List<Code> codes = new ArrayList<>();
        places.stream().limit(MOST).sorted().forEach(k -> describe(outline.scale(), wide, k, codes));
        return codes;
    }

    /** The scale that a code belongs to. */
    public static OutlineScale scaleOf(int code) {
        return OutlineScale.values()[code / CODES_OF_A_SCALE];
    }

    private static boolean standsOut(double[] course, int k) {
        double here = Math.abs(course[k]);
        if (!(here >= LEAST_V)) {
            return false;
        }
        for (int j = Math.max(0, k - ALONE); j <= Math.min(course.length - 1, k + ALONE); j++) {
            if (j < k && Math.abs(course[j]) >= here || j > k && Math.abs(course[j]) > here) {
                return false;
            }
        }
        return true;
    }

    private static boolean whole(double[] values, int k) {
        for (int j = k - AROUND; j <= k + AROUND; j++) {
            if (Double.isNaN(values[j])) {
                return false;
            }
        }
        return true;
    }

    private static void describe(OutlineScale scale, double[] values, int k, List<Code> codes) {
        for (int band = 0; band < BANDS; band++) {
            int bits = 0;
            int ties = 0;
            int rising = 0;
            for (int bit = 0; bit < BITS; bit++) {
                int[] pair = PAIRS[band * BITS + bit];
                double apart = values[k + pair[0]] - values[k + pair[1]];
                ties += Math.abs(apart) < TIE_V ? 1 : 0;
                rising += apart > 0 == pair[0] > pair[1] ? 1 : 0;
                bits = bits << 1 | (apart > 0 ? 1 : 0);
            }
            if (ties <= MOST_TIES && rising >= PLAIN && rising <= BITS - PLAIN) {
                codes.add(new Code(k, (scale.ordinal() * BANDS + band) << BITS | bits));
            }
        }
    }

    /** Places to compare, from a linear congruential generator with the constants of Numerical Recipes; never change them. */
    private static int[][] pairs() {
        int[][] pairs = new int[BANDS * BITS][];
        int seed = 20261125;
        int n = 0;
        while (n < pairs.length) {
            seed = 1664525 * seed + 1013904223;
            int a = (seed >>> 16) % (2 * AROUND + 1) - AROUND;
            seed = 1664525 * seed + 1013904223;
            int b = (seed >>> 16) % (2 * AROUND + 1) - AROUND;
            if (Math.abs(a - b) >= 8) {
                pairs[n++] = new int[] {a, b};
            }
        }
        return pairs;
    }
}
