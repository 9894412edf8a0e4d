package org.voltdocket.diagnosis.rulebook;

import java.util.Optional;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.signal.NormalDistribution;
import org.voltdocket.kernel.Interval;

/**
 * Likelihoods of the three sides of a rule's limits (below, inside, above) given a measurement.
 *
 * <p>The error is normal. The likelihood m of a side is the mean over its part of the plausible range; a value outside the
 * limits has the prior probability π = 0.1.
 */
final class SideLikelihoods {

    private static final int BELOW = 0;
    private static final int INSIDE = 1;
    private static final int ABOVE = 2;

    /** How often a value lies outside in cases that the row has nothing to do with (ours). */
    private static final double RARELY = 0.1;

    private static final double LEAST_ROOM = 1e-6;
    /** How far a window's plausible range reaches where the row names none, in widths of the window (ours). */
    private static final double WIDTHS = 5;

    /** π: probability beforehand. */
    private final double[] before;
    /** m: mean likelihood of the measurement over the side, in any unit common to the three. */
    private final double[] likely;
    /** π·m. */
    private final double[] joint;

    private SideLikelihoods(double[] before, double[] likely, double[] joint) {
        this.before = before;
        this.likely = likely;
        this.joint = joint;
    }

    /**
     * @param weighing number of the method; from 2 on a window that names no plausible range has one that reaches {@link
     *     #WIDTHS} times its width to either side, for without one a vague value would lie outside by its width alone
     */
    static SideLikelihoods of(Rule rule, Interval value, double low, double high) {
        if (value.low() == value.high()) {
            boolean under = value.value() < low;
            boolean over = value.value() > high;
            double[] there = {under ? 1 : 0, under || over ? 0 : 1, over ? 1 : 0};
            return new SideLikelihoods(new double[] {1, 1, 1}, there, there);
        }
        boolean window = rule.low().isPresent() && rule.high().isPresent();
        Optional<Rule.Range> plausible = window && rule.plausible().isEmpty()
                ? Optional.of(new Rule.Range(low - WIDTHS * (high - low), high + WIDTHS * (high - low)))
                : rule.plausible();
        Rule.Range all = range(plausible, value);
        double[] edges = {all.low(), clip(low, all), clip(high, all), all.high()};
        double[] before = {window ? RARELY / 2 : RARELY, 1 - RARELY, window ? RARELY / 2 : RARELY};
        double[] likely = new double[3];
        double[] joint = new double[3];
        for (int side = BELOW; side <= ABOVE; side++) {
            double mass = Math.max(0, chanceBelow(value, edges[side + 1]) - chanceBelow(value, edges[side]));
            double room = plausible.isEmpty() ? 1 : Math.max(LEAST_ROOM, edges[side + 1] - edges[side]);
            likely[side] = mass / room;
            joint[side] = mass * before[side] / room;
        }
        return new SideLikelihoods(before, likely, joint);
    }

    /** Probability that the true value lies outside the limits. */
    double outside() {
        double[] p = chances();
        return p[BELOW] + p[ABOVE];
    }

    /**
     * What the measurement gives a cause, decibans; w is the row's weight on a side and r = 10^(w/10).
     *
     * <p>Method 1 mixes the sides by their probability p, 10·log10 Σ p·r. It never comes to nothing, for the file's r are
     * no densities over the sides: a measurement without any information leaves 10·log10 Σ π·r.
     *
     * <p>Method 2 splits the likelihood of each side in two: what it shares with the other side of the limit, which cannot
     * tell the two apart and weighs nothing (r = 1), and what it has beyond, which weighs r. With s the excess of a side,
     * inside against the likelier of the two outsides and each outside against the inside,
     * 10·log10 (Σ π·(m − s + s·r) / Σ π·m). An exact value gives w of its side, one that tells nothing gives 0 for every
     * cause, and between them the weight moves one way only (ours; the mixture of an informative and an uninformative
     * measurement, as contamination models in robust statistics have it).
     *
     * @param method 1 or 2
     */
    double decibans(Rule rule, Cause cause) {
        double[] ratio = {
            ratio(rule.below().get(cause)),
            ratio(rule.inside().get(cause)),
            ratio(rule.above().get(cause))
        };
        return 10 * StrictMath.log10(resolved(ratio));
    }

    private double resolved(double[] ratio) {
        double[] excess = {
            Math.max(0, likely[BELOW] - likely[INSIDE]),
            Math.max(0, likely[INSIDE] - Math.max(likely[BELOW], likely[ABOVE])),
            Math.max(0, likely[ABOVE] - likely[INSIDE])
        };
        double weighed = 0;
        double sum = 0;
        for (int side = BELOW; side <= ABOVE; side++) {
            weighed += joint[side] + before[side] * excess[side] * (ratio[side] - 1);
            sum += joint[side];
        }
        return weighed / sum;
    }

    private double[] chances() {
        double[] p = new double[3];
        double sum = 0;
        for (int side = BELOW; side <= ABOVE; side++) {
            p[side] = joint[side];
            sum += p[side];
        }
        for (int side = BELOW; side <= ABOVE; side++) {
            p[side] /= sum;
        }
        return p;
    }

    /** Where the true value may lie at all: the plausible range, and what was measured. */
    private static Rule.Range range(Optional<Rule.Range> plausible, Interval value) {
        return plausible
                .map(r -> new Rule.Range(Math.min(r.low(), value.value()), Math.max(r.high(), value.value())))
                .orElse(new Rule.Range(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
    }

    private static double clip(double limit, Rule.Range all) {
        return Math.max(all.low(), Math.min(all.high(), limit));
    }

    private static double ratio(Double decibans) {
        return decibans == null ? 1 : StrictMath.pow(10, decibans / 10);
    }

    private static double chanceBelow(Interval value, double limit) {
        if (Double.isInfinite(limit)) {
            return limit > 0 ? 1 : 0;
        }
        return NormalDistribution.chanceBelow(value, limit);
    }
}
