package org.voltdocket.diagnosis.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A correlation at a lag is that of the pairs it stands for, whatever is missing. */
class LaggedTest {

    private static final int N = 300;
    private static final int LAGS = 25;

    static Stream<Consumer<double[][]>> holes() {
        return Stream.of(
                xy -> {},
                xy -> fill(xy[1], 0, 9),
                xy -> fill(xy[0], 0, 17),
                xy -> fill(xy[1], N - 30, N),
                xy -> fill(xy[0], N - 3, N),
                xy -> fill(xy[0], 100, 120),
                xy -> fill(xy[1], 40, 41),
                xy -> fill(xy[0], 10, N),
                xy -> fill(xy[1], 0, N));
    }

    private static void fill(double[] values, int from, int to) {
        java.util.Arrays.fill(values, from, to, Double.NaN);
    }

    /** The definition, one lag at a time, to the last digit. */
    @ParameterizedTest
    @MethodSource("holes")
    void everyLagIsTheSumOfItsPairs(Consumer<double[][]> holes) {
        Random chance = new Random(7);
        double[] x = chance.doubles(N, -1, 2).toArray();
        double[] y = chance.doubles(N, -1, 2).toArray();
        holes.accept(new double[][] {x, y});
        double[] found = Lagged.correlations(x, y, 0, LAGS - 1);
        assertThat(found).hasSize(LAGS);
        for (int lag = 0; lag < LAGS; lag++) {
            double xx = 0;
            double yy = 0;
            double xy = 0;
            for (int i = 0; i + lag < N; i++) {
                if (!Double.isNaN(x[i] + y[i + lag])) {
                    xx += x[i] * x[i];
                    yy += y[i + lag] * y[i + lag];
                    xy += x[i] * y[i + lag];
                }
            }
            assertThat(found[lag]).isEqualTo(xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : 0);
        }
    }

    @Test
    void whatIsToldSixStepsLateIsLikestThere() {
        double[] x = new Random(11).doubles(N, -1, 1).toArray();
        double[] y = new double[N];
        System.arraycopy(x, 0, y, 6, N - 6);
        double[] found = Lagged.correlations(x, y, 2, 9);
        assertThat(found[6 - 2]).isCloseTo(1, within(1e-12));
        assertThat(found[5 - 2]).isLessThan(0.3);
    }
}
