package org.voltdocket.insight.estimate;

import java.util.List;

/**
 * A control chart for the share of marked items in samples (p-chart): centre line and three sigma limits of each sample by
 * its own size (NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.2).
 *
 * @param centre share over all samples, 0 to 1
 * @param points one for each sample that holds anything, in the order given
 */
public record PChart(double centre, List<Point> points) {

    /**
     * A sample.
     *
     * @param sample its number in the order given
     * @param share marked of looked at
     * @param low lower limit, not below 0
     * @param high upper limit, not above 1
     */
    public record Point(int sample, Proportion share, double low, double high) {

        /** Whether the sample is outside its limits. */
        public boolean outside() {
            double p = (double) share.count() / share.of();
            return p < low || p > high;
        }
    }

    /** @return the chart; empty samples have no point, and without any item the centre is 0 */
    public static PChart of(List<Proportion> samples) {
        Proportion all = samples.stream().reduce(new Proportion(0, 0), Proportion::plus);
        double centre = all.known() ? (double) all.count() / all.of() : 0;
        List<Point> points = java.util.stream.IntStream.range(0, samples.size())
                .filter(i -> samples.get(i).known())
                .mapToObj(i -> point(i, samples.get(i), centre))
                .toList();
        return new PChart(centre, points);
    }

    private static Point point(int sample, Proportion share, double centre) {
        double reach = 3 * Math.sqrt(centre * (1 - centre) / share.of());
        return new Point(sample, share, Math.max(0, centre - reach), Math.min(1, centre + reach));
    }
}
