package org.voltdocket.diagnosis.quantity.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.RestVoltage;
import org.voltdocket.kernel.Interval;

/** What the vehicle says against what the posts show, on either side of each limit; rest voltage 12.5 V. */
class ReportedValueChecksTest {

    private static Made saying(double posts, double amperes, double volts) {
        return Driven.clamped(12.5, t -> posts, t -> 1)
                .with(Channel.REPORTED_A, t -> amperes)
                .with(Channel.REPORTED_V, t -> t < 60 ? 12.5 : volts);
    }

    /** More than half an ampere reported while the posts lie 30 mV under the rest voltage. */
    @ParameterizedTest
    @CsvSource({"12.45, 0.6, 100", "12.45, 0.4, 0", "12.49, 5, 0", "12.51, 5, 0", "12.45, -5, 0"})
    void aChargeReportedUnderTheRestVoltage(double posts, double amperes, double share) {
        assertThat(Driven.value(Driven.measured(saying(posts, amperes, 12.5)), "reported-charge-under-rest"))
                .isCloseTo(share, within(0.5));
    }

    /** More than 13.2 V and a charge seen by the vehicle, under 12.7 V at the posts. */
    @ParameterizedTest
    @CsvSource({"12.65, 13.3, 1, 100", "12.75, 13.3, 1, 0", "12.65, 13.1, 1, 0", "12.65, 13.3, -1, 0"})
    void aChargeThatOnlyTheVehicleSees(double posts, double volts, double amperes, double share) {
        assertThat(Driven.value(Driven.measured(saying(posts, amperes, volts)), "charge-seen-by-vehicle-only"))
                .isCloseTo(share, within(0.5));
    }

    /** Held at charging voltage no battery gives current: more than half an ampere out is the sensor's. */
    @ParameterizedTest
    @CsvSource({"-0.6, 100", "-0.4, 0", "3, 0"})
    void aDrainReportedWhileHeldAtChargingVoltage(double amperes, double share) {
        assertThat(Driven.value(Driven.measured(saying(14.4, amperes, 14.4)), "reported-drain-while-held"))
                .isCloseTo(share, within(0.5));
        assertThat(Driven.find(Driven.measured(saying(12.6, amperes, 12.6)), "reported-drain-while-held"))
                .as("never held")
                .isEmpty();
    }

    /** The error's ends are those of the charge by rest voltage, turned round: the more there was, the less the error. */
    @Test
    void theEndsOfTheErrorOfTheReportedCharge() {
        Interval rest = RestVoltage.charge(Chemistry.AGM, 12.5, 20, Math.hypot(0.03, 0.3 * 0.1), 0.08);
        Made made = saying(14.2, 3, 14.2).with(Channel.REPORTED_SOC, t -> 90);
        Interval error =
                Driven.find(Driven.measured(made), "reported-charge-error").orElseThrow();
        assertThat(error.value()).isCloseTo(90 - rest.value(), within(0.05));
        assertThat(error.low()).isCloseTo(90 - rest.high(), within(0.05));
        assertThat(error.high()).isCloseTo(90 - rest.low(), within(0.05));
    }

    /** A voltmeter 0.3 V off throughout is no gap that comes with charging; what it says more while charging is. */
    @Test
    void aConstantErrorIsNoGapThatComesWithCharging() {
        Made made = Driven.clamped(12.5, t -> 14.2, t -> 5)
                .with(Channel.REPORTED_V, t -> t < 60 ? 12.8 : t < 61 ? 10 : 14.2 + 0.3 + 0.4);
        assertThat(Driven.value(Driven.measured(made), "gap-while-charging")).isCloseTo(0.4, within(0.02));
    }
}
