package org.voltdocket.diagnosis.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;
import org.voltdocket.outside.Reference;

/** Regression against certified values, a general library, and points that lie. */
class RobustRegressionTest {

    private static final double NO_REWEIGHTING = 1e12;

    /** NIST Statistical Reference Datasets, Norris: certified slope and intercept of ordinary least squares. */
    @Test
    void norris() {
        List<String[]> rows = Reference.rows("norris.csv");
        double[] x = rows.stream().mapToDouble(r -> Double.parseDouble(r[0])).toArray();
        double[] y = rows.stream().mapToDouble(r -> Double.parseDouble(r[1])).toArray();
        RobustRegression found = RobustRegression.of(NO_REWEIGHTING, y, x);
        assertThat(found.by()[1]).isCloseTo(1.00211681802045, within(1e-10));
        assertThat(found.by()[0]).isCloseTo(-0.262323073774029, within(1e-8));
    }

    /** Hipparchus' ordinary least squares, three factors. */
    @Test
    void ordinaryLeastSquares() {
        Random chance = new Random(2);
        int n = 200;
        double[][] x = new double[3][n];
        double[][] rows = new double[n][3];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            for (int a = 0; a < 3; a++) {
                x[a][i] = 5 * chance.nextGaussian() + (a == 2 ? x[0][i] : 0);
                rows[i][a] = x[a][i];
            }
            y[i] = 1.5 + 0.3 * x[0][i] - 2 * x[1][i] + 0.7 * x[2][i] + chance.nextGaussian();
        }
        OLSMultipleLinearRegression library = new OLSMultipleLinearRegression();
        library.newSampleData(y, rows);
        double[] expected = library.estimateRegressionParameters();
        double[] errors = library.estimateRegressionParametersStandardErrors();
        RobustRegression found = RobustRegression.of(NO_REWEIGHTING, y, x);
        for (int a = 0; a <= 3; a++) {
            assertThat(found.by()[a]).isCloseTo(expected[a], within(1e-9));
            assertThat(found.se()[a]).isCloseTo(errors[a], within(0.25 * errors[a]));
        }
    }

    @Test
    void aTenthOfWildPointsHardlyMovesIt() {
        Random chance = new Random(5);
        int n = 300;
        double[] a = new double[n];
        double[] b = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            a[i] = chance.nextGaussian();
            b[i] = chance.nextGaussian();
            y[i] = 2 + 3 * a[i] - b[i] + 0.1 * chance.nextGaussian() + (i % 10 == 0 ? 20 : 0);
        }
        RobustRegression found = RobustRegression.of(y, a, b);
        assertThat(found.by()[0]).isCloseTo(2, within(0.06));
        assertThat(found.by()[1]).isCloseTo(3, within(0.06));
        assertThat(found.by()[2]).isCloseTo(-1, within(0.06));
    }

    /** Rows with something missing are passed over: the others alone give the same to the last digit. */
    @Test
    void rowsWithSomethingMissingArePassedOver() {
        Random chance = new Random(6);
        double[] x = chance.doubles(40, 0, 10).toArray();
        double[] y = new double[40];
        for (int i = 0; i < 40; i++) {
            y[i] = 1 + 2 * x[i] + chance.nextGaussian();
        }
        RobustRegression whole = RobustRegression.of(y, x);
        double[] longX = java.util.Arrays.copyOf(x, 42);
        double[] longY = java.util.Arrays.copyOf(y, 42);
        longX[40] = Double.NaN;
        longY[41] = Double.NaN;
        RobustRegression found = RobustRegression.of(longY, longX);
        assertThat(found.by()).isEqualTo(whole.by());
        assertThat(found.se()).isEqualTo(whole.se());
        assertThat(found.points()).isEqualTo(40);
    }

    @Test
    void factorsThatSayTheSameOrTooFewPointsGiveNothing() {
        double[] x = new double[50];
        double[] y = new double[50];
        for (int i = 0; i < 50; i++) {
            x[i] = i;
            y[i] = 2 * i;
        }
        assertThat(RobustRegression.of(y, x, x.clone())).isNull();
        assertThat(RobustRegression.of(new double[] {1, 2, 3}, new double[] {1, 2, 3}))
                .isNull();
    }
}
