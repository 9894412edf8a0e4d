package org.voltdocket.diagnosis.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Selecting gives what sorting by the class library gives. */
class SelectionTest {

    static Stream<double[]> series() {
        Random chance = new Random(3);
        return IntStream.of(1, 2, 3, 24, 25, 49, 400, 3001)
                .boxed()
                .flatMap(n -> Stream.<IntToDoubleFunction>of(
                                i -> chance.nextGaussian(),
                                i -> Math.rint(3 * chance.nextDouble()),
                                i -> i,
                                i -> -i,
                                i -> i < n / 2 ? i : n - i,
                                i -> i % 2 == 0 ? i : 1e9 - i,
                                i -> Math.exp(20 * chance.nextGaussian()),
                                i -> i == n / 3 ? Double.POSITIVE_INFINITY : i,
                                i -> Double.MIN_VALUE * chance.nextInt(5),
                                i -> 12.4)
                        .map(f -> IntStream.range(0, n).mapToDouble(f).toArray()));
    }

    @ParameterizedTest
    @MethodSource("series")
    void everyRankIsTheSortedOne(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int n = values.length;
        for (int k = 0; k < n; k += 1 + n / 17) {
            double[] own = values.clone();
            assertThat(Selection.of(own, n, k)).isEqualTo(sorted[k]);
            if (k + 1 < n) {
                assertThat(Selection.behind(own, n, k)).isEqualTo(sorted[k + 1]);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("series")
    void whatLiesBetweenTwoRanksIsMixedOfTheSortedOnes(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int n = values.length;
        for (int k = 0; k < n; k += 1 + n / 37) {
            double high = sorted[Math.min(k + 1, n - 1)];
            if (Double.isFinite(high)) {
                assertThat(Selection.between(values.clone(), n, k, 0)).isEqualTo(sorted[k]);
                assertThat(Selection.between(values.clone(), n, k, 0.25))
                        .isEqualTo(sorted[k] + 0.25 * (high - sorted[k]));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("series")
    void aPartIsSortedAndTheRestLeftAlone(double[] values) {
        double[] expected = values.clone();
        int from = values.length / 4;
        Arrays.sort(expected, from, values.length);
        Selection.sort(values, from, values.length);
        assertThat(values).isEqualTo(expected);
    }
}
