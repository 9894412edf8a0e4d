package org.voltdocket.worlds.ceraolo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Against the figures of UN Regulation 83: 195 s and 1.013 km in town, 400 s and 6.955 km outside (from memory). Without gear changes 2 % is lost. */
class RegulatoryCycleTest {

    @Test
    void bothPartsHaveTheLengthOfTheRegulation() {
        assertThat(seconds(RegulatoryCycle.URBAN)).isEqualTo(195);
        assertThat(seconds(RegulatoryCycle.EXTRA_URBAN)).isEqualTo(400);
        assertThat(kilometres(RegulatoryCycle.URBAN)).isCloseTo(1.013, within(0.03));
        assertThat(kilometres(RegulatoryCycle.EXTRA_URBAN)).isCloseTo(6.955, within(0.05));
    }

    private static double seconds(double[][] part) {
        double sum = 0;
        for (double[] row : part) {
            sum += row[0];
        }
        return sum;
    }

    private static double kilometres(double[][] part) {
        double sum = 0;
        double speed = 0;
        for (double[] row : part) {
            sum += row[0] * (speed + row[1]) / 2 / 3600;
            speed = row[1];
        }
        return sum;
    }
}
