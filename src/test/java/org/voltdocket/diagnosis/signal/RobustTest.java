package org.voltdocket.diagnosis.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.hipparchus.stat.descriptive.rank.Percentile.EstimationType;
import org.junit.jupiter.api.Test;

class RobustTest {

    /** Against Hipparchus, type 7 of Hyndman and Fan (1996). */
    @Test
    void quantilesAgreeWithAReferenceLibrary() {
        Random chance = new Random(3);
        Percentile reference = new Percentile().withEstimationType(EstimationType.R_7);
        for (int n = 1; n <= 60; n++) {
            double[] values = chance.doubles(n, -20, 20).toArray();
            for (double p : new double[] {0.005, 0.025, 0.25, 0.5, 0.7, 0.9, 0.975, 1}) {
                assertThat(Robust.quantile(values, p))
                        .isCloseTo(reference.evaluate(values, 100 * p), within(1e-12 * 20));
            }
        }
    }

    /** By hand: h = (n - 1)·p, so of 1 2 3 4 the lower quartile lies at 0.75 of the way from 1 to 2. */
    @Test
    void quantilesByHand() {
        double[] four = {4, 2, 1, 3};
        assertThat(Robust.quantile(four, 0.25)).isEqualTo(1.75);
        assertThat(Robust.quantile(four, 0.5)).isEqualTo(2.5);
        assertThat(Robust.quantile(four, 0)).isEqualTo(1);
        assertThat(Robust.quantile(four, 1)).isEqualTo(4);
        assertThat(Robust.median(new double[0])).isNaN();
    }

    /** Deviations of 1 1 2 2 4 6 9 from their median 2 are 1 1 0 0 2 4 7, whose median is 1 (textbook example). */
    @Test
    void theMedianDeviationIsScaledToAStandardDeviation() {
        assertThat(Robust.sd(new double[] {1, 1, 2, 2, 4, 6, 9})).isCloseTo(1.4826, within(5e-5));
        double[] normal = new Random(1).doubles(20_000).map(x -> 0).toArray();
        Random chance = new Random(2);
        for (int i = 0; i < normal.length; i++) {
            normal[i] = 3 + 0.5 * chance.nextGaussian();
        }
        assertThat(Robust.sd(normal)).isCloseTo(0.5, within(0.015));
    }

    @Test
    void wildValuesMoveNothingAndMissingOnesArePassedOver() {
        double[] values = {12.4, Double.NaN, 12.5, 12.6, 12.5, 400, Double.NaN};
        assertThat(Robust.median(values)).isEqualTo(12.5);
        assertThat(Robust.sd(values)).isLessThan(0.2);
        assertThat(Robust.count(values)).isEqualTo(5);
        assertThat(Robust.median(new float[] {Float.NaN, 12.5f, 400, Float.NaN, 12.25f}))
                .isEqualTo(12.5);
        assertThat(Robust.median(new float[] {Float.NaN})).isNaN();
        assertThat(Robust.mean(new double[] {1, Double.NaN, 3})).isEqualTo(2);
        assertThat(Robust.mean(new double[] {Double.NaN})).isNaN();
    }

    @Test
    void movingMeanAndMedianOfThreeByHand() {
        assertThat(Robust.movingMean(new double[] {1, 2, Double.NaN, 4, 9}, 1))
                .containsExactly(1.5, 1.5, Double.NaN, 6.5, 6.5);
        assertThat(Robust.medianOfThree(new double[] {1, 9, 2, 3, Double.NaN, 3}))
                .containsExactly(1, 2, 3, 3, Double.NaN, 3);
    }

    @Test
    void theResolutionIsTheCoarsestStepThatAllValuesAreMultiplesOf() {
        assertThat(Robust.resolution(new float[] {12.4f, 12.45f, Float.NaN, 12.6f}, 0.1))
                .isEqualTo(0.05);
        assertThat(Robust.resolution(new float[] {12.4f, 14.4f, 13.9f}, 0.1)).isEqualTo(0.1);
        assertThat(Robust.resolution(new float[] {14, 14, 14}, 0.1)).isEqualTo(0.1);
        assertThat(Robust.resolution(new float[] {12.4012f, 12.4523f}, 0.1)).isZero();
    }
}
