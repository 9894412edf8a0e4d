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
class LineTest {

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
        Line line = Line.through(x, y);
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
        Line line = Line.through(x, spoilt);
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
                Line line = Line.through(a, b);
                inside += Math.abs(line.intercept() - 2) <= Interval.Z95 * line.interceptSe() ? 1 : 0;
            }
            assertThat(inside / 300.0).as("kept %s", kept).isBetween(0.90, 0.99);
        }
    }

    @Test
    void missingPointsArePassedOverAndTooFewGiveNoLine() {
        double nan = Double.NaN;
        Line line = Line.through(new double[] {1, 2, nan, 4, 5, 6}, new double[] {3, 5, 7, 9, 11, 13});
        assertThat(line.slope()).isCloseTo(2, within(1e-9));
        assertThat(line.intercept()).isCloseTo(1, within(1e-9));
        assertThat(Line.through(new double[] {1, 2, nan, 4, 5}, new double[] {1, 2, 3, 4, 5}))
                .isNull();
        assertThat(Line.through(new double[] {3, 3, 3, 3, 3, 3}, new double[] {1, 2, 3, 4, 5, 6}))
                .isNull();
    }
}
