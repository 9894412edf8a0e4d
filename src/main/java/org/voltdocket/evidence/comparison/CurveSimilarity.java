package org.voltdocket.evidence.comparison;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * How alike two outlines are once one is laid over the other.
 *
 * @param correlation Pearson's, of both courses without their level, 0 to 1
 * @param laterS how much later the second one starts within the course than the first, s
 * @param overlapS how long both show it, s
 */
public record CurveSimilarity(double correlation, double laterS, double overlapS) {

    /** Two recordings of different courses do not come near this, copies lie above it (ours, by the tests beside). */
    private static final double SAME = 0.75;
    /** The same for starts, which are much alike in every vehicle (ours). */
    private static final double SAME_START = 0.85;
    /** Half a step beside the truth a copy still lies above this; what does not is not laid any finer (ours). */
    private static final double HOPELESS = 0.4;
    /** Landmarks with a common offset that make it worth looking. */
    public static final int FEWEST_VOTES = 2;

    private static final int TOLERANCE = 2;
    /** Offsets that are tried. */
    private static final int OFFSETS = 3;

    /** A copy shows at least this share of the shorter one. */
    private static final double OVERLAP = 0.5;
    /** A course of swings smaller than this share of the largest tells nothing (ours). */
    private static final double LEAST_SWING = 0.03;
    /** A swing of this size counts half of what the largest can, V (ours). */
    private static final double HALF_V = 0.015;

    /**
     * A landmark of both.
     *
     * @param step in the first outline
     * @param other in the second
     */
    public record Vote(int step, int other) {}

    /** The same votes, seen from the other. */
    public static List<Vote> turned(List<Vote> votes) {
        return votes.stream().map(vote -> new Vote(vote.other(), vote.step())).toList();
    }

    /** Whether there are enough votes at some scale to fetch the outlines at all. */
    public static boolean worthALook(Collection<List<Vote>> votes) {
        return votes.stream().anyMatch(at -> !offsets(at).isEmpty());
    }

    /**
     * Lays the second outline over the first where most of the common landmarks say, and compares.
     *
     * @return empty where they are not one course
     */
    public static Optional<CurveSimilarity> of(VoltageOutline first, VoltageOutline second, List<Vote> votes) {
        double limit = first.scale() == OutlineScale.START ? SAME_START : SAME;
        return closest(first, second, votes).filter(best -> best.correlation >= limit);
    }

    /** The best that can be made of them, alike or not. */
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

    /** Steps that the second lies later in the course, as most landmarks say within {@value #TOLERANCE} steps; a few. */
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
        double least = Math.max(VoltageOutline.SHORTEST / 2, OVERLAP * Math.min(Robust.count(a), Robust.count(b)));
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

    /** Both where step {@code k} of the first is step {@code k - offset} of the second; null where that tells nothing. */
    private static CurveSimilarity laid(double[] a, double[] b, double offset, double stepS, double least) {
        int whole = (int) Math.floor(offset);
        double part = offset - whole;
        int from = Math.max(0, whole + 1);
        int to = (int) Math.min(a.length, (long) whole + b.length);
        if (to - from < least) {
            return null; // the overlap is too short, whatever it shows
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
        return n < least ? null : new CurveSimilarity(correlation(x, y, n), offset * stepS, n * stepS);
    }

    /** Large swings count hardly more than middling ones: one start or switch that both happen to have makes no copy. */
    private static double[] even(VoltageOutline outline) {
        double[] course = outline.course();
        for (int k = 0; k < course.length; k++) {
            course[k] /= Math.abs(course[k]) + HALF_V;
        }
        return course;
    }

    private static double correlation(double[] x, double[] y, int n) {
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
