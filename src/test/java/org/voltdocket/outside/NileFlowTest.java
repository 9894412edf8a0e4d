package org.voltdocket.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.regime.ChangePoints;

/**
 * The flow of the Nile fell once in a hundred years, with the year 1899 (index 28): Cobb (1978), and the annotated data
 * set of alan-turing-institute/TCPD. Means and squared errors were calculated apart from this project's code.
 */
class NileFlowTest {

    private final double[] flow = Reference.rows("nile.csv").stream()
            .mapToDouble(cells -> Double.parseDouble(cells[1]))
            .toArray();

    @Test
    void aSingleChangeIsFoundWithTheUsualPenalty() {
        double penalty = 2 * error(flow) / (flow.length - 1) * Math.log(flow.length);
        assertThat(ChangePoints.optimalPartition(flow, penalty)).containsExactly(28);
    }

    @Test
    void theChangeIsTheOneWithTheLeastSquaredError() {
        double[] before = Arrays.copyOfRange(flow, 0, 28);
        double[] after = Arrays.copyOfRange(flow, 28, 100);
        assertThat(error(flow)).isCloseTo(2835156.8, within(0.06));
        assertThat(error(before) + error(after)).isCloseTo(1597457.2, within(0.06));
        assertThat(Arrays.stream(before).average().orElseThrow()).isCloseTo(1097.75, within(0.005));
        assertThat(Arrays.stream(after).average().orElseThrow()).isCloseTo(849.97, within(0.005));
    }

    @Test
    void aPenaltyAboveTheGainLeavesItWhole() {
        double gain = 2835156.8 - 1597457.2;
        assertThat(ChangePoints.optimalPartition(flow, gain * 1.001)).isEmpty();
        assertThat(ChangePoints.optimalPartition(flow, gain * 0.999)).containsExactly(28);
    }

    private static double error(double[] values) {
        double mean = Arrays.stream(values).average().orElseThrow();
        return Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
    }
}
