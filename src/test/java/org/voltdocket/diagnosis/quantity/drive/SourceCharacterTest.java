package org.voltdocket.diagnosis.quantity.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.MeasurementContext;

/**
 * Sources whose voltage is unusual. The loads step between 10 and 50 A; a cable of 30 mΩ takes 0.3 to 1.5 V of 14.3 V (Ohm's
 * law).
 */
class SourceCharacterTest {

    private final double[] noise = Made.noise(new Random(2), Driven.SECONDS + 1, 0.01, 0.5);
    private final double[] loads = Made.steps(new Random(3), Driven.SECONDS + 1, 10, 50, 20, 90);

    private static MeasurementContext managed(double celsius) {
        return new MeasurementContext(Driven.facts(70, ChargingControl.MANAGED), celsius);
    }

    private static Measurement found(DriveQuantities all, String quantity) {
        return all.measurements().stream()
                .filter(m -> m.quantity().equals(quantity))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aSourceCommandedLowHoldsItsVoltage() {
        DriveQuantities held = Driven.measured(Driven.volts(12.3, t -> 12.8 + noise[(int) t]), managed(20));
        assertThat(Driven.value(held, "low-voltage-spread")).isLessThan(0.1);
        assertThat(found(held, "low-voltage-spread").applies()).isGreaterThan(0.95);
        assertThat(Driven.find(held, "best-of-sagging")).isEmpty();
        DriveQuantities charges =
                Driven.measured(Driven.volts(12.3, t -> (t < 200 ? 14.4 : 12.8) + noise[(int) t]), managed(20));
        assertThat(Driven.find(charges, "low-voltage-spread"))
                .as("charged after the start")
                .isEmpty();
    }

    @Test
    void aBatteryThatCarriesTheLoadsIsNoSourceCommandedLow() {
        DriveQuantities dead =
                Driven.measured(Driven.volts(12.5, t -> 12.1 - 0.0001 * t + noise[(int) t]), managed(20));
        assertThat(Driven.find(dead, "low-voltage-spread")).isEmpty();
    }

    @Test
    void aCableDropsWithTheLoadsAndLeavesTheBatteryAboveItsRestVoltage() {
        DriveQuantities cable =
                Driven.measured(Driven.volts(12.5, t -> 14.3 - 0.030 * loads[(int) t] + noise[(int) t]));
        assertThat(Driven.value(cable, "best-of-sagging")).isBetween(13.6, 14.0);
        assertThat(Driven.value(cable, "sag-over-rest")).isGreaterThan(0.2);
        DriveQuantities weak =
                Driven.measured(Driven.volts(12.5, t -> (loads[(int) t] > 20 ? 12.0 : 12.4) + noise[(int) t]));
        assertThat(Driven.value(weak, "best-of-sagging")).isLessThan(12.8);
        assertThat(Driven.value(weak, "sag-over-rest")).isNegative();
    }

    @Test
    void aSteadyVoltageThatIsTooHighIsToldFromOneThatFollowsItsControl() {
        DriveQuantities steady = Driven.measured(Driven.volts(12.8, t -> 15.3 + noise[(int) t]), managed(20));
        assertThat(Driven.value(steady, "over-voltage-spread")).isLessThan(0.1);
        DriveQuantities follows =
                Driven.measured(Driven.volts(12.8, t -> (t % 200 < 140 ? 15.6 : 14.1) + noise[(int) t]), managed(20));
        assertThat(Driven.value(follows, "over-voltage-spread")).isGreaterThan(1);
    }

    /** Service texts: managed charging rests only from 0 °C on. */
    @Test
    void chargingOfAFullBatteryCountsUnlessItIsCold() {
        DriveQuantities warm = Driven.measured(Driven.volts(12.9, t -> 14.5 + noise[(int) t]), managed(20));
        assertThat(Driven.value(warm, "charging-when-full")).isCloseTo(100, within(2.0));
        assertThat(found(warm, "charging-when-full").applies()).isGreaterThan(0.8);
        DriveQuantities cold = Driven.measured(Driven.volts(12.9, t -> 14.5 + noise[(int) t]), managed(0));
        assertThat(Driven.find(cold, "charging-when-full")).isEmpty();
        DriveQuantities low = Driven.measured(Driven.volts(12.2, t -> 14.5 + noise[(int) t]), managed(20));
        assertThat(Driven.find(low, "charging-when-full")).isEmpty();
    }

    @Test
    void theTripsThatARecordingShowsWholeAreTimed() {
        Made trips = Made.at(2, 2400)
                .with(Channel.MEASURED_V, t -> t % 600 < 100 ? 12.6 : t % 600 < 101 ? 10 : t % 600 < 350 ? 14.2 : 12.7)
                .with(Channel.ENGINE_RPM, t -> t % 600 > 101 && t % 600 < 350 ? 1800 : 0);
        assertThat(Driven.value(Driven.measured(trips), "trip-length")).isCloseTo(249, within(5.0));
        assertThat(Driven.find(Driven.measured(Driven.volts(12.6, t -> 14.2)), "trip-length"))
                .as("the end of the trip is not recorded")
                .isEmpty();
    }
}
