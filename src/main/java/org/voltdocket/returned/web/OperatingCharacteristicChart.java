package org.voltdocket.returned.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.voltdocket.returned.lot.Lot;
import org.voltdocket.returned.sampling.OperatingCharacteristic;
import org.voltdocket.returned.sampling.SamplingPlan;

/**
 * The operating characteristic of a lot's plan, as points of a picture 640 by 300.
 *
 * @param path of the curve
 * @param across ticks of nonconforming shares
 * @param up ticks of probabilities of acceptance
 * @param aql position of the AQL
 * @param refused where the plan accepts one lot in ten
 * @param here the share found in the sample so far; null before anything is tested
 */
public record OperatingCharacteristicChart(
        String path, List<Tick> across, List<Tick> up, Mark aql, Mark refused, Mark here) {

    static final double LEFT = 52;
    static final double RIGHT = 610;
    static final double TOP = 14;
    static final double BOTTOM = 252;
    private static final int POINTS = 120;

    /** A tick with its label. */
    public record Tick(double at, String label) {}

    /**
     * A point on the curve.
     *
     * @param share of nonconforming ones, 0 to 1
     * @param probability of acceptance there
     */
    public record Mark(double x, double y, double share, double probability) {}

    static OperatingCharacteristicChart of(Lot lot) {
        SamplingPlan plan = lot.plan();
        double refusedAt = OperatingCharacteristic.shareAt(plan, 0.1);
        double tested = lot.progress().tested();
        Double found = tested == 0 ? null : lot.progress().nonconforming() / tested;
        double end = nice(Math.min(1, Math.max(refusedAt * 1.5, found == null ? 0 : found * 1.1)));
        StringBuilder path = new StringBuilder();
        for (int i = 0; i <= POINTS; i++) {
            double share = end * i / POINTS;
            Mark at = mark(plan, share, end);
            path.append(i == 0 ? "M" : "L").append(String.format(Locale.ROOT, "%.1f %.1f", at.x(), at.y()));
        }
        List<Tick> across = new ArrayList<>();
        List<Tick> up = new ArrayList<>();
        for (int i = 0; i <= 5; i++) {
            double share = end * i / 5;
            across.add(new Tick(x(share, end), label(share)));
            up.add(new Tick(y(i / 5.0), String.format(Locale.ROOT, "%d %%", i * 20)));
        }
        return new OperatingCharacteristicChart(
                path.toString(),
                across,
                up,
                mark(plan, lot.aql() / 100, end),
                mark(plan, refusedAt, end),
                found == null ? null : mark(plan, found, end));
    }

    private static Mark mark(SamplingPlan plan, double share, double end) {
        double probability = OperatingCharacteristic.ofSeries(plan, share);
        return new Mark(x(share, end), y(probability), share, probability);
    }

    private static double x(double share, double end) {
        return LEFT + (RIGHT - LEFT) * share / end;
    }

    private static double y(double probability) {
        return BOTTOM - (BOTTOM - TOP) * probability;
    }

    private static String label(double share) {
        String text = String.format(Locale.ROOT, "%.1f", share * 100);
        return text.replaceAll("\\.0$", "") + " %";
    }

    /** The next round share that divides by five well. */
    private static double nice(double share) {
        for (double end : new double[] {0.01, 0.02, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.75}) {
            if (share <= end) {
                return end;
            }
        }
        return 1;
    }
}
