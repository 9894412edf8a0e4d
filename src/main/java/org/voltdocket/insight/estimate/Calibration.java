package org.voltdocket.insight.estimate;

import java.util.ArrayList;
import java.util.List;

/**
 * How well stated probabilities came true: a reliability diagram of the first cause, the Brier score (G. W. Brier, 1950,
 * Monthly Weather Review 78, 1-3) and the logarithmic score (I. J. Good, 1952).
 *
 * @param bins ten, of the first cause's stated probability, rising; empty ones have no share
 * @param brierFirst mean squared distance of the first cause's probability from what came true, 0 best
 * @param brierAll mean over the cases of the squared distances summed over all causes, 0 best, 2 worst
 * @param logScore mean of -ln of the probability stated for what came true, 0 best
 * @param cases how many
 */
public record Calibration(List<Bin> bins, double brierFirst, double brierAll, double logScore, int cases) {

    /** A probability of nothing at all is scored as if this had been stated. */
    public static final double LEAST = 1e-6;

    /**
     * A tenth of the scale.
     *
     * @param from lower end, belongs to it
     * @param to upper end, belongs to the next one but for the last
     * @param stated mean probability stated in it, 0 without cases
     * @param came how often the first cause was confirmed
     */
    public record Bin(double from, double to, double stated, Proportion came) {}

    /**
     * One audited case.
     *
     * @param stated probability of each cause, adding to 1
     * @param cameTrue which one it was
     */
    public record Case(double[] stated, int cameTrue) {

        private int first() {
            int first = 0;
            for (int i = 1; i < stated.length; i++) {
                first = stated[i] > stated[first] ? i : first;
            }
            return first;
        }
    }

    /** @return the scores; of no case, empty bins and NaN */
    public static Calibration of(List<Case> cases) {
        double[] stated = new double[10];
        long[] hits = new long[10];
        long[] all = new long[10];
        double first = 0;
        double every = 0;
        double log = 0;
        for (Case one : cases) {
            int named = one.first();
            double p = one.stated()[named];
            boolean hit = named == one.cameTrue();
            int bin = (int) Math.min(9, Math.floor(p * 10));
            stated[bin] += p;
            hits[bin] += hit ? 1 : 0;
            all[bin]++;
            first += (p - (hit ? 1 : 0)) * (p - (hit ? 1 : 0));
            for (int i = 0; i < one.stated().length; i++) {
                double distance = one.stated()[i] - (i == one.cameTrue() ? 1 : 0);
                every += distance * distance;
            }
            log -= StrictMath.log(Math.max(LEAST, one.stated()[one.cameTrue()]));
        }
        List<Bin> bins = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            bins.add(new Bin(
                    i / 10.0, (i + 1) / 10.0, all[i] == 0 ? 0 : stated[i] / all[i], new Proportion(hits[i], all[i])));
        }
        int n = cases.size();
        return new Calibration(bins, first / n, every / n, log / n, n);
    }
}
