package org.voltdocket.worlds.fit;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.Rule;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.worlds.fit.FitCase.Look;

/**
 * Weights of evidence fitted on cases whose truth is known. The model is that of the diagnosis: starting odds times likelihood
 * ratios, of one group only the strongest for and the strongest against a cause. It maximises the likelihood of the true
 * causes less a penalty on the square of the distance from the expert's weights, by gradient descent with momentum (Adam,
 * Kingma and Ba 2015).
 *
 * <p>What physics says stays: a weight of the expert's keeps its sign, and the order of a cause's weights on the sides of a
 * limit is not reversed. No weight moves by more than {@link #MOST}. A rule that gives no cause a weight stays without.
 */
public final class WeightFit {

    /** Largest change, decibans. */
    private static final double MOST = 9;
    /** A side seen in fewer cases keeps the expert's weights. */
    private static final int LEAST_CASES = 10;

    /** Groups of rules on facts; how facts and causes go together in the worlds is invented, so they gain no causes. */
    private static final Set<String> FACTS =
            Set.of("age", "history", "duty", "misfit-type", "misfit-size", "control-kind");

    private static final int STEPS = 120;
    private static final double RATE = 0.4;
    private static final double NATS = StrictMath.log(10) / 10;
    private static final Cause[] CAUSES = Cause.values();
    private static final int SIDES = 3;

    private final Rulebook book;
    private final Map<String, Integer> index = new LinkedHashMap<>();
    /** By rule, side and cause. */
    private final double[][][] expert;

    private final double[][][] weight;
    /** Whether a rule speaks of facts. */
    private final boolean[] factual;
    /** Cases by rule and side. */
    private final int[][] support;

    private WeightFit(Rulebook book) {
        this.book = book;
        book.rules().forEach(rule -> index.put(rule.id(), index.size()));
        expert = new double[index.size()][][];
        weight = new double[index.size()][][];
        support = new int[index.size()][SIDES];
        factual = new boolean[index.size()];
        for (Rule rule : book.rules()) {
            double[][] own = {values(rule.below()), values(rule.inside()), values(rule.above())};
            expert[index.get(rule.id())] = own;
            factual[index.get(rule.id())] = FACTS.contains(rule.group());
            weight[index.get(rule.id())] =
                    Arrays.stream(own).map(double[]::clone).toArray(double[][]::new);
        }
    }

    private static double[] values(Map<Cause, Double> weights) {
        return Arrays.stream(CAUSES)
                .mapToDouble(cause -> weights.getOrDefault(cause, 0.0))
                .toArray();
    }

    /** The weights of the rule book as they are. */
    public static WeightFit none(Rulebook book) {
        return new WeightFit(book);
    }

    /**
     * @param penalty of one square deciban, nats; larger keeps the weights nearer to the expert's
     */
    public static WeightFit on(Rulebook book, List<FitCase> cases, double penalty) {
        WeightFit fit = new WeightFit(book);
        fit.count(cases);
        List<PreparedCase> prepared = cases.stream()
                .map(one -> new PreparedCase(one, book, fit.index))
                .toList();
        double[][][] mean = new double[fit.index.size()][SIDES][CAUSES.length];
        double[][][] square = new double[fit.index.size()][SIDES][CAUSES.length];
        for (int step = 1; step <= STEPS; step++) {
            double[][][] slope = new double[fit.index.size()][SIDES][CAUSES.length];
            double[][][] ratios = fit.ratios();
            for (PreparedCase one : prepared) {
                one.addSlope(fit.weight, ratios, slope);
            }
            double rate = RATE * (1 - 0.9 * step / STEPS);
            fit.descend(slope, mean, square, penalty, rate, step);
        }
        return fit;
    }

    private void count(List<FitCase> cases) {
        Set<String> seen = new HashSet<>();
        for (FitCase one : cases) {
            for (Look look : one.looks()) {
                double[] shares = look.shares();
                for (int side = 0; side < SIDES; side++) {
                    boolean there = shares[side] > 0.5;
                    if (there && seen.add(one.origin() + " " + look.rule() + " " + side)) {
                        support[index.get(look.rule())][side]++;
                    }
                }
            }
        }
    }

    private void descend(
            double[][][] slope, double[][][] mean, double[][][] square, double penalty, double rate, int step) {
        double first = 1 - StrictMath.pow(0.9, step);
        double second = 1 - StrictMath.pow(0.99, step);
        for (int r = 0; r < weight.length; r++) {
            for (int s = 0; s < SIDES && !silent(r); s++) {
                for (int c = 0; c < CAUSES.length && support[r][s] >= LEAST_CASES; c++) {
                    if (factual[r] && expert[r][s][c] == 0) {
                        continue;
                    }
                    double g = NATS * slope[r][s][c] + 2 * penalty * (weight[r][s][c] - expert[r][s][c]);
                    mean[r][s][c] = 0.9 * mean[r][s][c] + 0.1 * g;
                    square[r][s][c] = 0.99 * square[r][s][c] + 0.01 * g * g;
                    double move = rate * mean[r][s][c] / first / (StrictMath.sqrt(square[r][s][c] / second) + 1e-3);
                    weight[r][s][c] = bounded(weight[r][s][c] - move, expert[r][s][c]);
                }
            }
            for (int c = 0; c < CAUSES.length; c++) {
                keepOrder(r, 0, c);
                keepOrder(r, 2, c);
            }
        }
    }

    /** Whether the expert gives the rule no weight at all, because it speaks of a measurement and not of a cause. */
    private boolean silent(int rule) {
        return Arrays.stream(expert[rule]).flatMapToDouble(Arrays::stream).allMatch(w -> w == 0);
    }

    /** A weight keeps its sign, and moves by no more than {@link #MOST}. */
    private static double bounded(double next, double expert) {
        double low = expert > 0 ? Math.max(0.3, expert - MOST) : expert - MOST;
        double high = expert < 0 ? Math.min(-0.3, expert + MOST) : expert + MOST;
        return Math.max(low, Math.min(high, next));
    }

    /** Where the fit reverses the order of outside and inside, both take their mean. */
    private void keepOrder(int rule, int side, int cause) {
        double before = expert[rule][side][cause] - expert[rule][1][cause];
        double now = weight[rule][side][cause] - weight[rule][1][cause];
        if (before * now < 0) {
            double middle = (weight[rule][side][cause] + weight[rule][1][cause]) / 2;
            weight[rule][side][cause] = bounded(middle, expert[rule][side][cause]);
            weight[rule][1][cause] = bounded(middle, expert[rule][1][cause]);
        }
    }

    private double[][][] ratios() {
        double[][][] ratios = new double[weight.length][SIDES][CAUSES.length];
        for (int r = 0; r < weight.length; r++) {
            for (int s = 0; s < SIDES; s++) {
                for (int c = 0; c < CAUSES.length; c++) {
                    ratios[r][s][c] = StrictMath.exp(NATS * weight[r][s][c]);
                }
            }
        }
        return ratios;
    }

    /** Probabilities of all causes with the fitted weights, for each case. */
    public List<double[]> probabilities(List<FitCase> cases) {
        double[][][] ratios = ratios();
        return cases.stream()
                .map(one -> new PreparedCase(one, book, index).probabilities(weight, ratios))
                .toList();
    }

    /**
     * The weights of a rule on one side, decibans to one place; those near nothing that the expert did not have are left out.
     *
     * @param side 0 below, 1 inside, 2 above
     */
    Map<Cause, Double> weights(String rule, int side) {
        Map<Cause, Double> out = new EnumMap<>(Cause.class);
        int r = index.get(rule);
        for (Cause cause : CAUSES) {
            double own = StrictMath.rint(10 * weight[r][side][cause.ordinal()]) / 10;
            boolean expected = expert[r][side][cause.ordinal()] != 0;
            if (Math.abs(own) >= (expected ? 0.1 : 1)) {
                out.put(cause, own);
            }
        }
        return out;
    }

    /** Cases in which the rule found something on a side. */
    int cases(String rule, int side) {
        return support[index.get(rule)][side];
    }
}
