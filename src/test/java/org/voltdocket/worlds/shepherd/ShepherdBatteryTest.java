package org.voltdocket.worlds.shepherd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.voltdocket.worlds.shepherd.ShepherdBattery.Constants;

/** The published constants of the 12 V, 7.2 Ah battery (Tremblay and Dessaint 2009) at points worked out by hand. */
class ShepherdBatteryTest {

    private static ShepherdBattery published(double charge) {
        return new ShepherdBattery(Constants.PUBLISHED, 1, 25, charge);
    }

    @Test
    void theRestVoltageFallsHyperbolically() {
        // E0 = 12.4659; K Q it/(Q - it) = 0.047 x 7.2 = 0.3384 V at half charge and three times that at a quarter
        assertThat(published(1).voltage(0)).isCloseTo(12.4659, within(1e-9));
        assertThat(published(0.5).voltage(0)).isCloseTo(12.4659 - 0.3384, within(1e-9));
        assertThat(published(0.25).voltage(0)).isCloseTo(12.4659 - 3 * 0.3384, within(1e-9));
    }

    @Test
    void aLoadShowsTheResistanceAtOnceAndThePolarisationLater() {
        // R i = 0.04 x 3.6 = 0.144 V at once; K Q/(Q - it) i* = 0.094 x 3.6 = 0.338 V after many times the filter's 30
        // s
        ShepherdBattery battery = published(0.5);
        assertThat(battery.voltage(-3.6)).isCloseTo(12.4659 - 0.3384 - 0.144, within(1e-9));
        for (int i = 0; i < 300; i++) {
            battery.step(-3.6, 1);
        }
        double taken = 3.6 + 0.3;
        double used = 0.047 * 7.2 / (7.2 - taken);
        assertThat(battery.voltage(-3.6)).isCloseTo(12.4659 - used * (taken + 3.6) - 0.144, within(1e-3));
    }

    @Test
    void chargingRaisesTheExponentialZoneAndDischargingTakesItAway() {
        // dExp/dt = B |i| (A u - Exp): 12.5 time constants of charge reach A = 0.83 V, one of discharge leaves A/e
        ShepherdBattery battery = published(0.5);
        for (int i = 0; i < 360; i++) {
            battery.step(1, 1);
        }
        double rest = 12.4659 - 0.047 * 7.2 / 3.7 * 3.5;
        assertThat(battery.voltage(0)).isCloseTo(rest + 0.83, within(0.01));
        for (int i = 0; i < 288; i++) {
            battery.step(-1, 0.1);
        }
        assertThat(battery.voltage(0)).isCloseTo(rest + 0.83 / StrictMath.E, within(0.01));
    }

    @Test
    void anotherSizeOfTheSameMakeHasTheSameVoltageAtTheSameShareOfItsCapacity() {
        ShepherdBattery large = new ShepherdBattery(Constants.PUBLISHED.of(72, 12.4659, 0.004), 1, 25, 0.5);
        assertThat(large.voltage(0)).isCloseTo(published(0.5).voltage(0), within(1e-9));
        assertThat(large.voltage(-36)).isCloseTo(published(0.5).voltage(-3.6), within(1e-9));
    }

    @Test
    void aLostCellTakesASixthOfTheVoltage() {
        ShepherdBattery lost = new ShepherdBattery(Constants.PUBLISHED, 5 / 6.0, 25, 1);
        assertThat(lost.voltage(0)).isCloseTo(12.4659 * 5 / 6, within(1e-9));
    }
}
