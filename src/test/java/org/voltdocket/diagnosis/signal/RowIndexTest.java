package org.voltdocket.diagnosis.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The bounds are those that counting every row gives, however the rows lie. */
class RowIndexTest {

    /** Even, uneven, with a gap of a hundred steps, in bursts, one row a step on its very border, few rows, one row. */
    static Stream<double[]> times() {
        Random chance = new Random(8);
        double[] uneven = chance.doubles(700, 0, 60).sorted().toArray();
        return Stream.of(
                IntStream.range(0, 601).mapToDouble(i -> i / 10.0).toArray(),
                uneven,
                IntStream.range(0, 400)
                        .mapToDouble(i -> i / 10.0 + (i < 200 ? 0 : 100))
                        .toArray(),
                IntStream.range(0, 400)
                        .mapToDouble(i -> i / 40 * 7 + i % 40 / 50.0)
                        .toArray(),
                IntStream.range(0, 60).mapToDouble(i -> i).toArray(),
                new double[] {0.2, 31, 31.5},
                new double[] {5});
    }

    @ParameterizedTest
    @MethodSource("times")
    void rowsUpToCentresAreCounted(double[] time) {
        for (double stepS : new double[] {0.25, 1, 7}) {
            int steps = (int) ((time[time.length - 1] - time[0]) / stepS) + 1;
            for (double delayS : new double[] {0, 0.4, 3, 200}) {
                int[] counted = IntStream.range(0, steps)
                        .map(k -> (int) Arrays.stream(time)
                                .filter(t -> t <= time[0] + (k + 0.5) * stepS + delayS)
                                .count())
                        .toArray();
                assertThat(RowIndex.upToCentres(time, time[0], stepS, steps, delayS))
                        .isEqualTo(counted);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("times")
    void rowsOfStepsAreCountedAndTheLastStepHasTheRest(double[] time) {
        for (double stepS : new double[] {0.25, 1, 7}) {
            int steps = (int) ((time[time.length - 1] - time[0]) / stepS) + 1;
            int[] counted = IntStream.range(0, steps)
                    .map(k -> (int) Arrays.stream(time)
                            .filter(t -> (int) ((t - time[0]) / stepS) <= k)
                            .count())
                    .toArray();
            assertThat(RowIndex.ends(time, time[0], stepS, steps)).isEqualTo(counted);
            if (steps > 3) {
                assertThat(RowIndex.ends(time, time[0], stepS, 3)).endsWith(time.length);
            }
        }
    }
}
