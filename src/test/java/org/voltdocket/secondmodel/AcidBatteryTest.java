package org.voltdocket.secondmodel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.secondmodel.DriveCycle.Leg;
import org.voltdocket.secondmodel.DriveCycle.Phase;

/** The battery of the second model obeys conservation and stands where published tables put a real one. */
class AcidBatteryTest {

    private static AcidBattery flooded(double charge) {
        return new AcidBattery(70, 0.0045, 0, 1.1417, 1.2683, charge, 25);
    }

    @Test
    void chargeIntoThePostsIsStoredOrGassed() {
        AcidBattery battery = flooded(0.6);
        Random chance = new Random(3);
        double stored = 70 * battery.charge() + battery.layerAh();
        double given = 0;
        for (int i = 0; i < 60_000; i++) {
            double current = i % 600 < 8 ? -250 : 25 * Math.sin(i / 900.0) + 10 * chance.nextGaussian();
            battery.step(current, 0.1);
            given += current * 0.1 / 3600;
        }
        double now = 70 * battery.charge() + battery.layerAh();
        assertThat(now - stored).isCloseTo(given - battery.gassedAh(), within(1e-6));
        assertThat(battery.gassedAh()).isPositive();
    }

    @Test
    void aRoundTripLosesEnergyButNeverMakesAny() {
        AcidBattery battery = flooded(0.5);
        double out = 0;
        double in = 0;
        for (int i = 0; i < 36_000; i++) {
            double current = i < 18_000 ? 12 : -12;
            double watt = battery.terminal(current) * current;
            battery.step(current, 0.1);
            if (current > 0) {
                in += watt * 0.1;
            } else {
                out -= watt * 0.1;
            }
        }
        assertThat(out / in).as("energy out over energy in").isBetween(0.70, 0.97);
    }

    /** Flooded rest voltages at 26.7 °C: age-series/ElectricalAge2, ds.csv. */
    @ParameterizedTest
    @CsvSource({"1.00, 12.650", "0.75, 12.450", "0.50, 12.240", "0.25, 12.060", "0.00, 11.890"})
    void aDayAfterACurrentTheRestVoltageIsThatOfTheTable(double charge, double tableV) {
        AcidBattery battery = flooded(charge);
        battery.temperature(26.7);
        double pulse = charge > 0.5 ? -7 : 7;
        for (double t = 0; t < 600; t += 0.5) {
            battery.step(pulse, 0.5);
        }
        for (double t = 0; t < 600; t += 0.5) {
            battery.step(-pulse, 0.5);
        }
        for (double t = 0; t < 24 * 3600; t += 5) {
            battery.step(0, 5);
        }
        assertThat(battery.charge()).isCloseTo(charge, within(0.02));
        assertThat(battery.terminal(0)).isCloseTo(tableV, within(0.05));
    }

    @Test
    void anHourAfterChargingItStillReadsHighAndKeepsFalling() {
        AcidBattery battery = flooded(0.7);
        for (double t = 0; t < 1800; t += 0.1) {
            battery.step(Math.max(0, (14.4 - battery.inner()) / battery.resistance()), 0.1);
        }
        for (double t = 0; t < 600; t += 0.5) {
            battery.step(0, 0.5);
        }
        double tenMinutes = battery.terminal(0);
        double settled = battery.rested(battery.charge(), 25).terminal(0);
        for (double t = 0; t < 3600; t += 0.5) {
            battery.step(0, 0.5);
        }
        assertThat(tenMinutes).isGreaterThan(battery.terminal(0) + 0.005);
        assertThat(battery.terminal(0)).isGreaterThan(settled);
    }

    /** Common practice: a sound, well charged battery cranks between about 8.5 and 10.8 V at its first instant. */
    @Test
    void aSoundBatteryCranksInTheUsualBand() {
        for (long seed = 1; seed <= 20; seed++) {
            Garage garage = new Garage(Scenario.HEALTHY_CONVENTIONAL, new Random(seed));
            Trace trace = new Workshop(garage)
                    .vehicle(0.95, 0.2)
                    .run(List.of(new Leg(Phase.AWAKE, 5, 0), new Leg(Phase.CRANK, 0.8, 0)), 0.5);
            assertThat(trace.crankMinimum()).as("seed %d", seed).isBetween(8.5, 10.8);
        }
    }

    /** Capacity at C/20 is about the charge that the battery holds, and falls at higher currents (Peukert, 1897). */
    @Test
    void onTheBenchItGivesWhatItHoldsAndLessAtHigherCurrents() {
        AcidBattery battery = new AcidBattery(70, 0.005, 0, 1.1417, 1.2683, 0.4, 10);
        double before = Double.POSITIVE_INFINITY;
        for (double hours : new double[] {20, 10, 5, 2}) {
            Trace run = Bench.discharge(battery, 70 / hours, 25);
            double ampereHours = run.endS() / 3600 * 70 / hours;
            if (hours == 20) {
                assertThat(ampereHours).isBetween(0.93 * 70, 1.05 * 70);
            }
            assertThat(ampereHours).isLessThan(before);
            before = ampereHours;
        }
    }
}
