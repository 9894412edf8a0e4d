package org.voltdocket.worlds.ceraolo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.voltdocket.worlds.ceraolo.CeraoloBattery.Parameters;

/** Against the parameters of SAE 2007-01-0778 and properties of Ceraolo's equations (2000), worked out by hand. */
class CeraoloBatteryTest {

    private static CeraoloBattery published(double celsius, double charge) {
        return new CeraoloBattery(Parameters.JACKEY, 1, 6, celsius, charge);
    }

    @Test
    void theCapacityAtTheReferenceCurrentIsTheReferenceCapacityAndKcTimesThatWithoutCurrent() {
        // C0* = 1.8e5 As, Kt(25 °C) = 0.80, Kc = 1.2; Kt falls to zero at the freezing point of -40 °C
        CeraoloBattery battery = published(25, 1);
        assertThat(battery.capacityAs(15)).isCloseTo(1.44e5, within(1e-6));
        assertThat(battery.capacityAs(0)).isCloseTo(1.2 * 1.44e5, within(1e-6));
        assertThat(published(-40, 1).capacityAs(15)).isCloseTo(0, within(1e-9));
        assertThat(published(60, 1).capacityAs(15)).isCloseTo(1.2 * 1.8e5, within(1e-6));
    }

    @Test
    void theRestVoltageIsLinearInTheCharge() {
        // Em0 = 2.18 V; KE (273 + 25) = 0.1788 V per unit of charge. Nearer to full the self-discharge through R2
        // shows.
        assertThat(published(25, 0.75).voltage(0)).isCloseTo(6 * (2.18 - 0.0447), within(0.005));
        assertThat(published(25, 0.5).voltage(0)).isCloseTo(6 * (2.18 - 0.0894), within(0.005));
        assertThat(published(0, 0.5).voltage(0)).isCloseTo(6 * (2.18 - 0.0819), within(0.005));
    }

    @Test
    void theMainBranchResistsChargingOfAFullBatteryAndNoDischarge() {
        // R20 exp(A21 (1 - SOC)) = 0.11 exp(-1) at 90 % and a large charge current
        assertThat(published(25, 0.9).mainBranchOhm(60)).isCloseTo(0.11 * 0.36788, within(1e-4));
        assertThat(published(25, 0.9).mainBranchOhm(-60)).isLessThan(1e-9);
    }

    @Test
    void gassingTakesSixTenthsOfAnAmpereAtTwoPointFourVoltsPerCell() {
        // 2.4 x 2e-11 x exp(2.4 / 0.12 + 2 (1 + 25 / 40)) = 0.6006 A
        CeraoloBattery battery = published(25, 1);
        double amperes = 2;
        for (int i = 0; i < 2000; i++) {
            amperes += 2 * (14.4 - battery.voltage(amperes));
            battery.step(amperes, 0.05);
        }
        assertThat(battery.parasiticA()).isCloseTo(0.6006, within(0.002));
    }

    @Test
    void theFastBranchSettlesWithItsTimeConstant() {
        // R1 = -R10 ln DOC; after τ1 = 100 s a constant current has brought 63 % of its voltage
        CeraoloBattery battery = published(25, 0.5);
        double first = battery.voltage(-15);
        battery.step(-15, 100);
        double after = battery.voltage(-15);
        double depth = 1 - 0.5 * battery.capacityAs(0) / battery.capacityAs(15);
        double expected = 6 * 15 * 0.0010 * -StrictMath.log(depth) * 0.632;
        assertThat(first - after).isCloseTo(expected, within(0.035));
    }
}
