package org.voltdocket.worlds.ciemat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.voltdocket.worlds.ciemat.CiematBattery.Make;

/** The published equations (Copetti, Lorenzo and Chenlo 1993) at points worked out by hand, 100 Ah in 10 h. */
class CiematBatteryTest {

    private static CiematBattery published(double celsius, double charge) {
        return new CiematBattery(100, Make.PUBLISHED, 6, celsius, charge);
    }

    @Test
    void dischargeAtTheTenHourCurrentAndHalfChargeFollowsTheEquation() {
        // 2.085 - 0.06 - 0.1 (4/(1 + 10^1.3) + 0.27/0.5^1.5 + 0.02) = 1.9275
        assertThat(published(25, 0.5).discharging(10)).isCloseTo(1.9275, within(1e-4));
        // 10 K colder: the last term grows by 7 %
        assertThat(published(15, 0.5).discharging(10)).isCloseTo(2.025 - 1.07 * 0.09746, within(1e-3));
    }

    @Test
    void chargeAtTheTenHourCurrentAndHalfChargeFollowsTheEquation() {
        // 2 + 0.08 + 0.1 (6/(1 + 10^0.86) + 0.48/0.5^1.2 + 0.036) = 2.2667, below gassing at 2.24 + 1.97 ln 1.1 =
        // 2.4278
        assertThat(published(25, 0.5).charging(10)).isCloseTo(2.2667, within(1e-3));
    }

    @Test
    void anOverchargeEndsAtTheFinalVoltage() {
        // 2.45 + 2.011 ln 1.1 = 2.6417 V after many time constants of 17.3/(1 + 852 x 0.1^1.67) h
        CiematBattery battery = published(25, 0.97);
        for (int i = 0; i < 20 * 60; i++) {
            battery.step(10, 60);
        }
        assertThat(battery.charging(10)).isCloseTo(2.6417, within(2e-3));
    }

    @Test
    void theCapacityInTenHoursIsC10AndGrowsToFiveThirdsWithoutCurrent() {
        assertThat(published(25, 1).capacityAh(10)).isCloseTo(100, within(1e-9));
        assertThat(published(25, 1).capacityAh(0)).isCloseTo(167, within(1e-9));
        assertThat(published(35, 1).capacityAh(10)).isCloseTo(105, within(1e-9));
    }

    @Test
    void aHalfChargedBatteryStoresAllAndAFullOneNothing() {
        // 1 - exp(20.73 (0.5 - 1)/1.55) = 0.99875
        assertThat(published(25, 0.5).efficiency(10)).isCloseTo(0.99875, within(1e-5));
        assertThat(published(25, 1).efficiency(10)).isCloseTo(0, within(1e-12));
    }

    @Test
    void aChargedBatteryComesToRestWithinHours() {
        CiematBattery battery = published(25, 0.8);
        battery.step(5, 1800);
        double first = battery.voltage(0);
        for (int i = 0; i < 12 * 60; i++) {
            battery.step(0, 60);
        }
        double rest = 6 * (2.085 - 0.12 * (1 - battery.charge()));
        assertThat(first).isGreaterThan(rest + 0.1);
        assertThat(battery.voltage(0)).isCloseTo(rest, within(0.005));
    }
}
