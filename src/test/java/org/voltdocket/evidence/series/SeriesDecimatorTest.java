package org.voltdocket.evidence.series;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.evidence.Series;

/** What a person must see on a drawing survives the thinning. */
class SeriesDecimatorTest {

    private static Series.Line thin(double[] t, float[] v, int points, double medianStepS) {
        SeriesDecimator thinner = new SeriesDecimator(t[0], t[t.length - 1], points, medianStepS);
        for (int i = 0; i < t.length; i++) {
            thinner.add(t[i], v[i]);
        }
        return thinner.line();
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 10, 101, 1000, 4000})
    void everyMinimumAndMaximumSurvives(int points) {
        Random random = new Random(points);
        for (int turn = 0; turn < 20; turn++) {
            int n = 2 + random.nextInt(8000);
            double[] t = new double[n];
            float[] v = new float[n];
            double at = random.nextDouble() * 100;
            for (int i = 0; i < n; i++) {
                t[i] = at;
                v[i] = random.nextInt(40) == 0 ? random.nextFloat() * 10 : 12 + (float) random.nextGaussian() * 0.1f;
                at += 0.01 + random.nextDouble() * (random.nextInt(500) == 0 ? 200 : 0.1);
            }
            Series.Line line = thin(t, v, points, 0.06);
            assertThat(line.t()).isSorted().doesNotHaveDuplicates();
            assertThat(line.t()).startsWith(t[0]).endsWith(t[n - 1]);
            trueSamplesOnly(t, v, line);
            int stretches = Math.max(1, (points - 2) / 2);
            double width = (t[n - 1] - t[0]) / stretches;
            for (int s = 0; s < stretches; s++) {
                extremesOf(t, v, s, t[0], width, line);
            }
            assertThat((long) line.t().size()).isLessThanOrEqualTo(Math.min(n, points + 2) + 4 * breaks(line));
        }
    }

    private static void extremesOf(double[] t, float[] v, int stretch, double from, double width, Series.Line line) {
        float low = Float.POSITIVE_INFINITY;
        float high = Float.NEGATIVE_INFINITY;
        List<Float> shown = new ArrayList<>();
        for (int i = 0; i < t.length; i++) {
            if ((int) ((t[i] - from) / width) == stretch) {
                low = Math.min(low, v[i]);
                high = Math.max(high, v[i]);
            }
        }
        for (int i = 0; i < line.t().size(); i++) {
            if (line.v().get(i) != null && (int) ((line.t().get(i) - from) / width) == stretch) {
                shown.add(line.v().get(i));
            }
        }
        if (low <= high) {
            assertThat(shown).contains(low, high);
        }
    }

    private static void trueSamplesOnly(double[] t, float[] v, Series.Line line) {
        int i = 0;
        for (int k = 0; k < line.t().size(); k++) {
            if (line.v().get(k) != null) {
                while (t[i] < line.t().get(k)) {
                    i++;
                }
                assertThat(t[i]).isEqualTo(line.t().get(k));
                assertThat(v[i]).isEqualTo(line.v().get(k));
            }
        }
    }

    private static long breaks(Series.Line line) {
        return line.v().stream().filter(value -> value == null).count();
    }

    @Test
    void aGapBreaksTheLineWhereItIs() {
        double[] t = new double[200];
        float[] v = new float[200];
        for (int i = 0; i < 200; i++) {
            t[i] = i < 100 ? i : i + 500;
            v[i] = 12;
        }
        for (int points : new int[] {1000, 50}) {
            Series.Line line = thin(t, v, points, 1);
            assertThat(breaks(line)).isEqualTo(1);
            int at = line.v().indexOf(null);
            assertThat(line.t().get(at - 1)).isEqualTo(99);
            assertThat(line.t().get(at)).isEqualTo(349.5);
            assertThat(line.t().get(at + 1)).isEqualTo(600);
        }
    }

    @Test
    void aSlowChannelIsNoRowOfGaps() {
        double[] t = new double[50];
        float[] v = new float[50];
        for (int i = 0; i < 50; i++) {
            t[i] = i * 30;
        }
        assertThat(breaks(thin(t, v, 1000, 30))).isZero();
    }

    @Test
    void oneSampleAlone() {
        assertThat(thin(new double[] {5}, new float[] {1}, 2, 0).t()).containsExactly(5.0);
        assertThat(new SeriesDecimator(0, 1, 2, 0).line().t()).isEmpty();
    }
}
