package org.voltdocket.evidence.comparison;

import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * Decides whether one of two similar recordings is a copy of the other. Both conditions must hold.
 *
 * <ol>
 *   <li>The correlation exceeds that of unrelated recordings with a false-alarm rate of at most {@value #FALSE_ALARM} per pair.
 *       {@code atanh r} is about normal with variance 1/(n − 3) (Fisher 1921), where n is the number of independent features:
 *       the number of steps divided by 1 + 2 Σ ρ₁(k) ρ₂(k), with the autocorrelations ρ of both (Bartlett 1946). The rate is
 *       divided by the number of alignments that are compared (Bonferroni).
 *   <li>Resampling and rounding explain what is missing to a correlation of 1. Vehicles on one route correlate too, up to 0.93 in
 *       the tests with generated drives, but a copy with a resolution of 0.01 V has at least 0.98. Values rounded to 0.1 V carry
 *       less: two vehicles that take the same route with almost the same loads may be reported then.
 * </ol>
 */
final class CopyCriterion {

    /** Highest probability that two unrelated recordings are taken for copies. */
    static final double FALSE_ALARM = 1e-6;

    /** Scales, offsets and positions around an offset that are compared for one pair. */
    private static final int ALIGNMENTS = 3 * 3 * 14;

    /** Least significance of a copy, standard deviations. */
    static final double QUANTILE = new NormalDistribution().inverseCumulativeProbability(1 - FALSE_ALARM / ALIGNMENTS);

    /** Usual correlation of unrelated drives at their best alignment (ours, by the test of generated drives). */
    private static final double UNRELATED = 0.3;

    /** The same for starts, which are similar in every vehicle (ours). */
    private static final double UNRELATED_START = 0.6;

    /** Lags of the autocorrelations, steps: the course has no slower parts. */
    private static final int LAGS = 32;

    /** What resampling takes from the correlation (ours, by the tests of generated drives). */
    private static final double RESAMPLING_LOSS = 0.03;

    /** What rounding to {@value #COARSE_V} V takes from the correlation (ours, by the same tests). */
    private static final double ROUNDING_LOSS = 0.15;

    private static final double COARSE_V = 0.1;

    private CopyCriterion() {}

    static boolean isCopy(VoltageOutline first, VoltageOutline second, CurveSimilarity similarity) {
        return significance(first, second, similarity) >= QUANTILE
                && similarity.correlation() >= leastCorrelation(first.resolutionV(), second.resolutionV());
    }

    /** Least correlation of a copy, by the resolutions of both, V. */
    static double leastCorrelation(double first, double second) {
        double coarseness = (first * first + second * second) / (COARSE_V * COARSE_V);
        return 1 - RESAMPLING_LOSS - ROUNDING_LOSS * Math.min(1, coarseness);
    }

    /** How far the correlation lies above that of unrelated recordings, in standard deviations. */
    static double significance(VoltageOutline first, VoltageOutline second, CurveSimilarity similarity) {
        double[][] both = overlap(CurveSimilarity.even(first), CurveSimilarity.even(second), similarity, first.scale());
        double unrelated = first.scale() == OutlineScale.START ? UNRELATED_START : UNRELATED;
        double r = Math.min(similarity.correlation(), 1 - 1e-9);
        double features = independentFeatures(both[0], both[1]);
        return features <= 3 ? 0 : (atanh(r) - atanh(unrelated)) * Math.sqrt(features - 3);
    }

    private static double[][] overlap(double[] a, double[] b, CurveSimilarity similarity, OutlineScale scale) {
        return CurveSimilarity.overlap(a, b, similarity.laterS() / scale.stepS(), 0);
    }

    private static double independentFeatures(double[] x, double[] y) {
        double inflation = 1;
        for (int lag = 1; lag <= Math.min(LAGS, x.length / 4); lag++) {
            inflation += 2 * autocorrelation(x, lag) * autocorrelation(y, lag);
        }
        return x.length / Math.max(1, inflation);
    }

    private static double autocorrelation(double[] x, int lag) {
        double mean = mean(x);
        double products = 0;
        double squares = 0;
        for (int i = 0; i < x.length; i++) {
            squares += (x[i] - mean) * (x[i] - mean);
            products += i < lag ? 0 : (x[i] - mean) * (x[i - lag] - mean);
        }
        return squares == 0 ? 0 : products / squares;
    }

    private static double mean(double[] x) {
        double sum = 0;
        for (double v : x) {
            sum += v;
        }
        return sum / x.length;
    }

    private static double atanh(double r) {
        return 0.5 * Math.log((1 + r) / (1 - r));
    }
}
