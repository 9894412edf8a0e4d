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
 *   <li>Rounding and resampling explain the difference of both. Different vehicles on one route may be very similar, but they
 *       differ by more than the resolution of the coarser recording.
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

    /** Share of the variance that resampling may change (ours). */
    private static final double RESAMPLED = 0.05;

    private CopyCriterion() {}

    static boolean isCopy(VoltageOutline first, VoltageOutline second, CurveSimilarity similarity) {
        double offset = similarity.laterS() / first.scale().stepS();
        return significance(first, second, similarity) >= QUANTILE && sameCourse(first, second, offset);
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

    private static boolean sameCourse(VoltageOutline first, VoltageOutline second, double offset) {
        double[][] both = CurveSimilarity.overlap(first.course(), second.course(), offset, 0);
        double[] difference = new double[both[0].length];
        for (int i = 0; i < difference.length; i++) {
            difference[i] = both[0][i] - both[1][i];
        }
        double rounded = (first.resolutionV() * first.resolutionV() + second.resolutionV() * second.resolutionV()) / 12;
        double resampled = RESAMPLED * Math.min(variance(both[0]), variance(both[1]));
        return variance(difference) <= rounded + resampled;
    }

    private static double mean(double[] x) {
        double sum = 0;
        for (double v : x) {
            sum += v;
        }
        return sum / x.length;
    }

    private static double variance(double[] x) {
        double mean = mean(x);
        double sum = 0;
        for (double v : x) {
            sum += (v - mean) * (v - mean);
        }
        return sum / x.length;
    }

    private static double atanh(double r) {
        return 0.5 * Math.log((1 + r) / (1 - r));
    }
}
