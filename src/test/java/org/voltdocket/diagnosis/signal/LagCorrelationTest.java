package org.voltdocket.diagnosis.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hipparchus.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LagCorrelationTest {

    /**
     * By hand, x = 1 -2 0 3 and y = 2 1 -2 0. Lag 0: 0 of √(14 · 9). Lag 1: 1·1 + 2·2 + 0 = 5 of √(5 · 5). Lag 2: -2 of
     * √(5 · 4). Lag 3: 1·0, and nothing correlates with zeros. From lag 4 on they do not overlap.
     */
    @Test
    void eachLagByHand() {
        double[] score = LagCorrelation.of(new double[] {1, -2, 0, 3}, new double[] {2, 1, -2, 0}, 6);
        assertThat(score).containsExactly(new double[] {0, 1, -2 / Math.sqrt(20), 0, 0, 0}, within(1e-15));
    }

    /** With the second and the last pair gone: 1·2 + 0·(-2) = 2 of √(1 · 8). */
    @Test
    void pairsWithSomethingMissingArePassedOver() {
        double[] x = {1, Double.NaN, 0, 3};
        double[] y = {2, 1, -2, Double.NaN};
        assertThat(LagCorrelation.of(x, y, 1)[0]).isCloseTo(2 / Math.sqrt(8), within(1e-15));
    }

    static Stream<Consumer<double[][]>> holes() {
        return Stream.of(
                xy -> {},
                xy -> Arrays.fill(xy[1], 0, 9, Double.NaN),
                xy -> Arrays.fill(xy[0], 0, 17, Double.NaN),
                xy -> Arrays.fill(xy[1], 270, 300, Double.NaN),
                xy -> Arrays.fill(xy[0], 100, 120, Double.NaN),
                xy -> Arrays.fill(xy[1], 40, 41, Double.NaN),
                xy -> Arrays.fill(xy[0], 10, 300, Double.NaN),
                xy -> Arrays.fill(xy[1], 0, 300, Double.NaN));
    }

    /** The definition, one lag at a time, to the last digit. */
    @ParameterizedTest
    @MethodSource("holes")
    void everyLagIsTheSumOfItsPairs(Consumer<double[][]> holes) {
        Random chance = new Random(7);
        double[] x = chance.doubles(300, -1, 2).toArray();
        double[] y = chance.doubles(300, -1, 2).toArray();
        holes.accept(new double[][] {x, y});
        double[] found = LagCorrelation.of(x, y, 25);
        for (int lag = 0; lag < found.length; lag++) {
            double xx = 0;
            double yy = 0;
            double xy = 0;
            for (int i = 0; i + lag < x.length; i++) {
                if (!Double.isNaN(x[i] + y[i + lag])) {
                    xx += x[i] * x[i];
                    yy += y[i + lag] * y[i + lag];
                    xy += x[i] * y[i + lag];
                }
            }
            assertThat(found[lag]).isEqualTo(xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : 0);
        }
    }

    /** Against Hipparchus, whose regression through zero has r² = the square of this correlation. */
    @Test
    void agreesWithAReferenceLibrary() {
        Random chance = new Random(12);
        double[] x = chance.doubles(300, -1, 1).toArray();
        double[] y = IntStream.range(0, 300)
                .mapToDouble(i -> (i < 7 ? 0 : x[i - 7]) + 0.3 * chance.nextGaussian())
                .toArray();
        double[] score = LagCorrelation.of(x, y, 25);
        for (int lag = 0; lag < score.length; lag++) {
            SimpleRegression reference = new SimpleRegression(false);
            for (int i = 0; i + lag < x.length; i++) {
                reference.addData(x[i], y[i + lag]);
            }
            assertThat(score[lag] * score[lag]).isCloseTo(reference.getRSquare(), within(1e-12));
        }
        assertThat(score[7]).isGreaterThan(0.8);
    }
}
