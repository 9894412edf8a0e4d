package org.voltdocket.evidence.comparison;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * How similar two outlines are at their best alignment.
 *
 * @param correlation Pearson's correlation of both courses without their level, 0 to 1
 * @param laterS start of the second relative to the start of the first, s
 * @param overlapS length of the overlap, s
 */
public record CurveSimilarity(double correlation, double laterS, double overlapS) {

    /** A copy exceeds this half a step beside its offset; other offsets are not refined (ours). */
    private static final double HOPELESS = 0.4;
    /** Least number of landmarks with a common offset. */
    public static final int FEWEST_VOTES = 2;

    private static final int TOLERANCE = 2;
    /** Offsets that are compared. */
    private static final int OFFSETS = 3;

    /** Least overlap, as a share of the shorter one. */
    private static final double OVERLAP = 0.5;
    /** A course with smaller swings, as a share of the largest, is not compared (ours). */
    private static final double LEAST_SWING = 0.03;
    /** A swing of this size is compressed to half of the largest, V (ours). */
    private static final double HALF_V = 0.015;

    /**
     * A landmark of both.
     *
     * @param step in the first outline
     * @param other in the second
     */
    public record Vote(int step, int other) {}

    /** The same votes with both sides exchanged. */
    public static List<Vote> turned(List<Vote> votes) {
        return votes.stream().map(vote -> new Vote(vote.other(), vote.step())).toList();
    }

    /** Whether there are enough votes at any scale. */
    public static boolean worthALook(Collection<List<Vote>> votes) {
        return votes.stream().anyMatch(at -> !offsets(at).isEmpty());
    }

    /**
     * Aligns the second outline with the first by their common landmarks and compares them.
     *
     * @return empty unless one is a copy of the other, see {@link CopyCriterion}
     */
    public static Optional<CurveSimilarity> of(VoltageOutline first, VoltageOutline second, List<Vote> votes) {
        return closest(first, second, votes).filter(best -> CopyCriterion.isCopy(first, second, best));
    }

    /** The best alignment, similar or not. */
    static Optional<CurveSimilarity> closest(VoltageOutline first, VoltageOutline second, List<Vote> votes) {
        if (first.scale() != second.scale()) {
            return Optional.empty();
        }
        List<Integer> offsets = offsets(votes);
        if (offsets.isEmpty()) {
            return Optional.empty();
        }
        double[] a = even(first);
        double[] b = even(second);
        CurveSimilarity best = null;
        for (int offset : offsets) {
            CurveSimilarity now = compare(a, b, offset, first.scale().stepS());
            best = best == null || now != null && now.correlation > best.correlation ? now : best;
        }
        return Optional.ofNullable(best);
    }

    /** The offsets, steps, with the most landmarks within {@value #TOLERANCE} steps. */
    private static List<Integer> offsets(List<Vote> votes) {
        Map<Integer, TreeSet<Integer>> by = new TreeMap<>();
        for (Vote vote : votes) {
            for (int d = -TOLERANCE; d <= TOLERANCE; d++) {
                by.computeIfAbsent(vote.step() - vote.other() + d, x -> new TreeSet<>())
                        .add(vote.step());
            }
        }
        List<Integer> best = new ArrayList<>();
        by.entrySet().stream()
                .filter(e -> e.getValue().size() >= FEWEST_VOTES)
                .sorted(Comparator.comparingInt((Map.Entry<Integer, TreeSet<Integer>> e) ->
                                -e.getValue().size())
                        .thenComparing(Map.Entry::getKey))
                .forEach(e -> {
                    if (best.size() < OFFSETS && best.stream().noneMatch(t -> Math.abs(t - e.getKey()) <= TOLERANCE)) {
                        best.add(e.getKey());
                    }
                });
        return best;
    }

    static CurveSimilarity compare(VoltageOutline first, VoltageOutline second, int offset) {
        return compare(even(first), even(second), offset, first.scale().stepS());
    }

    private static CurveSimilarity compare(double[] a, double[] b, int offset, double stepS) {
        double least = leastOverlap(a, b);
        CurveSimilarity best = null;
        int at = offset;
        for (int whole = offset - TOLERANCE - 1; whole <= offset + TOLERANCE + 1; whole++) {
            CurveSimilarity now = laid(a, b, whole, stepS, least);
            if (now != null && (best == null || now.correlation > best.correlation)) {
                best = now;
                at = whole;
            }
        }
        if (best == null || best.correlation < HOPELESS) {
            return best;
        }
        for (int quarter = 4 * at - 3; quarter <= 4 * at + 3; quarter++) {
            CurveSimilarity now = laid(a, b, quarter / 4.0, stepS, least);
            if (now != null && now.correlation > best.correlation) {
                best = now;
            }
        }
        return best;
    }

    static double leastOverlap(double[] a, double[] b) {
        return Math.max(VoltageOutline.SHORTEST / 2, OVERLAP * Math.min(Robust.count(a), Robust.count(b)));
    }

    /** Both at one offset; null if the overlap is too short. */
    private static CurveSimilarity laid(double[] a, double[] b, double offset, double stepS, double least) {
        double[][] both = overlap(a, b, offset, least);
        return both == null
                ? null
                : new CurveSimilarity(correlation(both[0], both[1]), offset * stepS, both[0].length * stepS);
    }

    /**
     * The values of both where step {@code k} of the first is step {@code k - offset} of the second.
     *
     * @return null if they have fewer than {@code least} steps in common
     */
    static double[][] overlap(double[] a, double[] b, double offset, double least) {
        int whole = (int) Math.floor(offset);
        double part = offset - whole;
        int from = Math.max(0, whole + 1);
        int to = (int) Math.min(a.length, (long) whole + b.length);
        if (to - from < least) {
            return null;
        }
        double[] x = new double[to - from];
        double[] y = new double[to - from];
        int n = 0;
        for (int k = from; k < to; k++) {
            int j = k - whole;
            double other = (1 - part) * b[j] + part * b[j - 1];
            if (!Double.isNaN(a[k]) && !Double.isNaN(other)) {
                x[n] = a[k];
                y[n++] = other;
            }
        }
        return n < least ? null : new double[][] {Arrays.copyOf(x, n), Arrays.copyOf(y, n)};
    }

    /** The course with large swings compressed, so that one start or switch in both does not make them similar. */
    static double[] even(VoltageOutline outline) {
        double[] course = outline.course();
        for (int k = 0; k < course.length; k++) {
            course[k] /= Math.abs(course[k]) + HALF_V;
        }
        return course;
    }

    private static double correlation(double[] x, double[] y) {
        int n = x.length;
        double mx = 0;
        double my = 0;
        for (int i = 0; i < n; i++) {
            mx += x[i] / n;
            my += y[i] / n;
        }
        double xx = 0;
        double yy = 0;
        double xy = 0;
        for (int i = 0; i < n; i++) {
            xx += (x[i] - mx) * (x[i] - mx);
            yy += (y[i] - my) * (y[i] - my);
            xy += (x[i] - mx) * (y[i] - my);
        }
        double least = LEAST_SWING * LEAST_SWING * n;
        return xx < least || yy < least ? 0 : xy / Math.sqrt(xx * yy);
    }
}
