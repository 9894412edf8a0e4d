package org.voltdocket.worlds;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.worlds.Assessor.Assessed;
import org.voltdocket.worlds.WorldEvaluation.Outcome;

/**
 * Corrections to the weights of evidence, fitted on cases whose truth is known: multinomial logistic regression whose offset is
 * the present posterior, with a ridge penalty, so that the weights shrink towards the expert's and not towards zero.
 *
 * <p>A correction is at most {@link #MOST} either way. It may weaken a weight of the expert's but not turn its sign, so that
 * what physics says of a direction stays.
 */
final class WeightFit {

    /** Largest correction, nats; 1.5 nats are 6.5 decibans. */
    private static final double MOST = 1.5;
    /** A finding seen in fewer cases is not corrected. */
    private static final int LEAST_CASES = 5;

    private static final int STEPS = 300;
    private static final double NATS = StrictMath.log(10) / 10;
    private static final Cause[] CAUSES = Cause.values();

    private final Map<String, Integer> index = new LinkedHashMap<>();
    private final int[] support;
    private final double[][] correction;
    private final double[][] low;
    private final double[][] high;

    private WeightFit(List<Outcome> cases) {
        Map<String, Integer> seen = new TreeMap<>();
        cases.forEach(o -> features(o.said()).forEach(f -> seen.merge(f, 1, Integer::sum)));
        seen.entrySet().stream()
                .filter(e -> e.getValue() >= LEAST_CASES)
                .forEach(e -> index.put(e.getKey(), index.size()));
        support = index.keySet().stream().mapToInt(seen::get).toArray();
        correction = new double[index.size()][CAUSES.length];
        low = new double[index.size()][CAUSES.length];
        high = new double[index.size()][CAUSES.length];
        bound(cases);
    }

    /**
     * @param penalty ridge penalty in cases; larger keeps the weights nearer to the expert's
     */
    static WeightFit on(List<Outcome> cases, double penalty) {
        WeightFit fit = new WeightFit(cases);
        int[][] found = cases.stream().map(o -> fit.found(o.said())).toArray(int[][]::new);
        double rate = 1.0
                / (penalty
                        + 0.5
                                * Arrays.stream(found)
                                        .mapToInt(f -> f.length)
                                        .max()
                                        .orElse(1));
        double[][] momentum = new double[fit.correction.length][CAUSES.length];
        for (int step = 0; step < STEPS; step++) {
            double[][] gradient = new double[fit.correction.length][CAUSES.length];
            for (int i = 0; i < found.length; i++) {
                double[] p = fit.probabilities(cases.get(i).said(), found[i]);
                p[cases.get(i).truth().fault().cause().ordinal()] -= 1;
                for (int f : found[i]) {
                    for (int c = 0; c < CAUSES.length; c++) {
                        gradient[f][c] += p[c];
                    }
                }
            }
            fit.descend(gradient, momentum, penalty, rate);
        }
        return fit;
    }

    private void descend(double[][] gradient, double[][] momentum, double penalty, double rate) {
        for (int f = 0; f < correction.length; f++) {
            double scaled = rate / (1 + support[f] / 20.0);
            for (int c = 0; c < CAUSES.length; c++) {
                double slope = gradient[f][c] + penalty * correction[f][c];
                momentum[f][c] = 0.9 * momentum[f][c] - scaled * slope;
                double next = correction[f][c] + momentum[f][c];
                correction[f][c] = Math.max(low[f][c], Math.min(high[f][c], next));
            }
        }
    }

    /** Bounds from the mean weight that the expert gave where the finding was seen. */
    private void bound(List<Outcome> cases) {
        double[][] given = new double[index.size()][CAUSES.length];
        for (Outcome o : cases) {
            o.said().findings().forEach((rule, side) -> {
                Integer f = index.get(rule + " " + side);
                Map<Cause, Double> weights = o.said().weights().getOrDefault(rule, Map.of());
                if (f != null) {
                    weights.forEach((cause, decibans) -> given[f][cause.ordinal()] += NATS * decibans / support[f]);
                }
            });
        }
        for (int f = 0; f < given.length; f++) {
            for (int c = 0; c < CAUSES.length; c++) {
                low[f][c] = given[f][c] > 0 ? Math.max(-MOST, -given[f][c]) : -MOST;
                high[f][c] = given[f][c] < 0 ? Math.min(MOST, -given[f][c]) : MOST;
            }
        }
    }

    private static List<String> features(Assessed said) {
        return said.findings().entrySet().stream()
                .map(e -> e.getKey() + " " + e.getValue())
                .toList();
    }

    private int[] found(Assessed said) {
        return features(said).stream()
                .filter(index::containsKey)
                .mapToInt(index::get)
                .toArray();
    }

    /** Probabilities of all causes with the corrections. */
    double[] probabilities(Assessed said) {
        return probabilities(said, found(said));
    }

    private double[] probabilities(Assessed said, int[] found) {
        double[] p = new double[CAUSES.length];
        double most = Double.NEGATIVE_INFINITY;
        for (int c = 0; c < p.length; c++) {
            p[c] = StrictMath.log(Math.max(1e-9, said.probabilities().getOrDefault(CAUSES[c], 0.0)));
            for (int f : found) {
                p[c] += correction[f][c];
            }
            most = Math.max(most, p[c]);
        }
        double sum = 0;
        for (int c = 0; c < p.length; c++) {
            p[c] = StrictMath.exp(p[c] - most);
            sum += p[c];
        }
        for (int c = 0; c < p.length; c++) {
            p[c] /= sum;
        }
        return p;
    }

    /** The largest corrections, decibans, with the cases that support them. */
    List<String> largest(int count) {
        Map<Double, String> sorted = new TreeMap<>();
        index.forEach((name, f) -> {
            for (int c = 0; c < CAUSES.length; c++) {
                double decibans = correction[f][c] / NATS;
                String row =
                        String.format(Locale.ROOT, "%s | %s | %+.1f | %d", name, CAUSES[c].id(), decibans, support[f]);
                sorted.put(-Math.abs(decibans) + 1e-7 * (f * CAUSES.length + c), row);
            }
        });
        return sorted.values().stream().limit(count).toList();
    }
}
