package org.voltdocket.diagnosis.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.hipparchus.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.kernel.Interval;
import org.voltdocket.outside.Reference;

/** The robust line against NIST StRD Norris, with and without gross errors, and its interval against chance. */
class RobustLineTest {

    private static final double SLOPE = 1.00211681802045;
    private static final double INTERCEPT = -0.262323073774029;

    private final double[] x = column(0);
    private final double[] y = column(1);

    private static double[] column(int which) {
        List<String[]> rows = Reference.rows("norris.csv");
        return rows.stream().mapToDouble(r -> Double.parseDouble(r[which])).toArray();
    }

    private static SimpleRegression leastSquares(double[] x, double[] y) {
        SimpleRegression plain = new SimpleRegression();
        for (int i = 0; i < x.length; i++) {
            plain.addData(x[i], y[i]);
        }
        return plain;
    }

    @Test
    void thePointsGiveTheCertifiedLineByLeastSquares() {
        SimpleRegression plain = leastSquares(x, y);
        assertThat(plain.getSlope()).isCloseTo(SLOPE, within(1e-13));
        assertThat(plain.getIntercept()).isCloseTo(INTERCEPT, within(1e-11));
    }

    @Test
    void theRobustLineLiesWithinAStandardErrorOfTheCertifiedOne() {
        SimpleRegression plain = leastSquares(x, y);
        RobustLine line = RobustLine.through(x, y);
        assertThat(line.slope()).isCloseTo(SLOPE, within(plain.getSlopeStdErr()));
        assertThat(line.intercept()).isCloseTo(INTERCEPT, within(plain.getInterceptStdErr()));
        assertThat(line.slopeSe()).isBetween(0.5 * plain.getSlopeStdErr(), 2 * plain.getSlopeStdErr());
        assertThat(line.interceptSe()).isBetween(0.5 * plain.getInterceptStdErr(), 2 * plain.getInterceptStdErr());
        assertThat(line.points()).isEqualTo(36);
    }

    @Test
    void fiveGrossErrorsOfThirtySixMoveLeastSquaresFarAndTheRobustLineLittle() {
        double[] spoilt = y.clone();
        for (int i : new int[] {3, 7, 20, 27, 28}) {
            spoilt[i] += 500;
        }
        SimpleRegression plain = leastSquares(x, y);
        RobustLine line = RobustLine.through(x, spoilt);
        double pulled = Math.abs(leastSquares(x, spoilt).getSlope() - SLOPE);
        assertThat(pulled).isGreaterThan(100 * plain.getSlopeStdErr());
        assertThat(line.slope()).isCloseTo(SLOPE, within(Math.min(pulled / 20, 8 * plain.getSlopeStdErr())));
        assertThat(line.intercept()).isCloseTo(INTERCEPT, within(4 * plain.getInterceptStdErr()));
    }

    /** Standard error times 1.96 covers the truth about nineteen times of twenty, also where residuals follow each other. */
    @Test
    void theIntervalCoversTheTruth() {
        for (double kept : new double[] {0, 0.6}) {
            int inside = 0;
            for (int draw = 0; draw < 300; draw++) {
                Random chance = new Random(1000 + draw);
                double[] a = chance.doubles(120, -20, 20).toArray();
                double[] noise = Made.noise(chance, a.length, 0.3, kept);
                double[] b = new double[a.length];
                for (int i = 0; i < a.length; i++) {
                    b[i] = 2 + 0.9 * a[i] + noise[i];
                }
                RobustLine line = RobustLine.through(a, b);
                inside += Math.abs(line.intercept() - 2) <= Interval.Z95 * line.interceptSe() ? 1 : 0;
            }
            assertThat(inside / 300.0).as("kept %s", kept).isBetween(0.90, 0.99);
        }
    }

    /**
     * Huber's estimating equations (Huber, 1964): residuals clipped at k standard deviations add to nothing, and so do they
     * times x.
     */
    @Test
    void theLineSolvesHubersEquations() {
        Random chance = new Random(21);
        double[] a = chance.doubles(200, 30, 50).toArray();
        double[] b = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            b[i] = 5 - 0.4 * a[i] + chance.nextGaussian() + (i % 8 == 0 ? 6 + a[i] / 5 : 0);
        }
        RobustLine line = RobustLine.through(a, b);
        double sum = 0;
        double moment = 0;
        double size = 0;
        for (int i = 0; i < a.length; i++) {
            double clip = 1.345 * line.residualSd();
            double psi = Math.max(-clip, Math.min(clip, b[i] - line.intercept() - line.slope() * a[i]));
            sum += psi;
            moment += psi * (a[i] - 40);
            size += Math.abs(psi) * 10;
        }
        assertThat(sum * 10 / size).isCloseTo(0, within(2e-3));
        assertThat(moment / size).isCloseTo(0, within(2e-3));
    }

    /** Far from zero the intercept is known much worse than the line; against Hipparchus' least squares. */
    @Test
    void standardErrorsOfPlainNoiseAreThoseOfLeastSquares() {
        Random chance = new Random(22);
        double[] a = chance.doubles(2000, 100, 120).toArray();
        double[] b = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            b[i] = 3 + 2 * a[i] + chance.nextGaussian();
        }
        SimpleRegression plain = leastSquares(a, b);
        RobustLine line = RobustLine.through(a, b);
        assertThat(line.slopeSe()).isCloseTo(plain.getSlopeStdErr(), within(0.12 * plain.getSlopeStdErr()));
        assertThat(line.interceptSe()).isCloseTo(plain.getInterceptStdErr(), within(0.12 * plain.getInterceptStdErr()));
    }

    /** Residuals that keep 0.6 of the one before widen both errors by the root of (1 + 0.6)/(1 - 0.6), which is 2. */
    @Test
    void residualsThatFollowEachOtherWidenBothErrors() {
        Random chance = new Random(23);
        double[] a = chance.doubles(4000, -10, 10).toArray();
        double[] noise = Made.noise(chance, a.length, 1, 0.6);
        double[] b = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            b[i] = 3 + 2 * a[i] + noise[i];
        }
        SimpleRegression plain = leastSquares(a, b);
        RobustLine line = RobustLine.through(a, b);
        assertThat(line.slopeSe() / plain.getSlopeStdErr()).isCloseTo(2, within(0.25));
        assertThat(line.interceptSe() / plain.getInterceptStdErr()).isCloseTo(2, within(0.25));
    }

    /**
     * By hand, for 1 1 -1 -1 with a deviation of 1: products of neighbours 1 - 1 + 1 = 1 over squares 4, so ρ = 1/4 and the
     * factor 5/3. What alternates gives no less than 1; of 2 18 with a deviation of 2 the eighteen counts as eight: 16/68, so 21/13.
     */
    @Test
    void theFactorOfResidualsThatFollowEachOtherByHand() {
        assertThat(RobustLine.correlatedFactor(new double[] {1, 1, -1, -1}, 1)).isCloseTo(5 / 3.0, within(1e-12));
        assertThat(RobustLine.correlatedFactor(new double[] {1, -1, 1, -1}, 1)).isEqualTo(1);
        assertThat(RobustLine.correlatedFactor(new double[] {2, 18}, 2)).isCloseTo(21 / 13.0, within(1e-12));
        assertThat(RobustLine.correlatedFactor(new double[] {-2, -18}, 2)).isCloseTo(21 / 13.0, within(1e-12));
        assertThat(RobustLine.correlatedFactor(new double[] {0, 0}, 1)).isEqualTo(1);
    }

    @Test
    void missingPointsArePassedOverAndTooFewGiveNoLine() {
        double nan = Double.NaN;
        RobustLine line = RobustLine.through(new double[] {1, 2, nan, 4, 5, 6}, new double[] {3, 5, 7, 9, 11, 13});
        assertThat(line.slope()).isCloseTo(2, within(1e-9));
        assertThat(line.intercept()).isCloseTo(1, within(1e-9));
        assertThat(RobustLine.through(new double[] {1, 2, nan, 4, 5}, new double[] {1, 2, 3, 4, 5}))
                .isNull();
        assertThat(RobustLine.through(new double[] {3, 3, 3, 3, 3, 3}, new double[] {1, 2, 3, 4, 5, 6}))
                .isNull();
    }
}
