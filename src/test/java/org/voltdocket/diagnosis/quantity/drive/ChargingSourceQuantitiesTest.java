package org.voltdocket.diagnosis.quantity.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Made;

/** What the source holds, lifts and carries, on either side of each limit. */
class ChargingSourceQuantitiesTest {

    /** Of 200 s it stands for 40 at 12.6 V, holds 14.4 V for 120 and falls to 13.6 V for 40: standing does not count. */
    @Test
    void aRegulatorIsJudgedByWhatItHoldsUnderWay() {
        Made made = Driven.volts(12.7, t -> t % 200 < 40 ? 12.6 : t % 200 < 160 ? 14.4 : 13.6)
                .with(Channel.SPEED, t -> t < 70 || t % 200 < 40 ? 0 : 60);
        DriveQuantities all = Driven.measured(made);
        assertThat(Driven.value(all, "regulated-voltage")).isCloseTo(14.4, within(0.01));
        assertThat(Driven.value(all, "sag-under-load")).isCloseTo(0.8, within(0.02));
        assertThat(Driven.value(all, "low-running-voltage-share")).isZero();
    }

    /** A voltage that sways by 0.1 V from one ten seconds to the next: the spread, and what it leaves of the level. */
    @Test
    void theSpreadOfARegulatorIsThatOfItsTenSeconds() {
        double[] sway = Made.noise(new Random(5), Driven.SECONDS / 10 + 1, 0.1, 0);
        DriveQuantities all = Driven.measured(Driven.volts(12.7, t -> 14.2 + sway[(int) (t / 10)]));
        var spread = Driven.find(all, "regulation-spread").orElseThrow();
        int blocks = (Driven.SECONDS - 70) / 10;
        assertThat(spread.value()).isCloseTo(0.1, within(0.03));
        assertThat(spread.high() - spread.value())
                .isCloseTo(1.96 * spread.value() / Math.sqrt(2.0 * blocks), within(0.001));
        var level = Driven.find(all, "regulated-voltage").orElseThrow();
        assertThat(level.value()).isCloseTo(14.2, within(0.04));
        assertThat(level.standardError())
                .isCloseTo(Math.hypot(0.05, 1.25 * spread.value() / Math.sqrt(blocks)), within(0.001));
    }

    /** A level is told where 13.2 V or more is held at least half of the time. */
    @ParameterizedTest
    @CsvSource({"13.25, 100, true", "13.15, 100, false", "14.4, 60, true", "14.4, 40, false"})
    void aLevelIsToldOnlyWhereItIsHeld(double volts, double percent, boolean told) {
        DriveQuantities all = Driven.measured(Driven.volts(12.7, t -> t % 100 < percent ? volts : 12.8));
        assertThat(Driven.find(all, "regulated-voltage").isPresent()).isEqualTo(told);
    }

    @ParameterizedTest
    @CsvSource({"39, true", "41, false"})
    void anEngineIsColdUnderFortyDegrees(double coolant, boolean cold) {
        DriveQuantities all = Driven.measured(Driven.volts(12.7, t -> 14.4).with(Channel.COOLANT, t -> coolant));
        assertThat(Driven.find(all, "lift-when-cold").isPresent()).isEqualTo(cold);
    }

    /** Each minute 20 s at a rate of slowing: 4 km/h in three seconds are slowing, at more than 15 km/h. */
    @ParameterizedTest
    @CsvSource({"80, 1.5, true", "80, 1.2, false", "40, 1.5, false", "16, 1.5, false"})
    void slowingDownIsFourKilometresAnHourInThreeSeconds(double from, double rate, boolean slows) {
        DoubleUnaryOperator speed = t -> Math.max(1, t % 60 < 40 ? from : from - rate * (t % 60 - 40));
        Made made = Driven.volts(12.7, t -> t % 60 < 40 ? 12.9 : 14.5).with(Channel.SPEED, speed);
        DriveQuantities all = Driven.measured(made);
        if (from == 40) {
            assertThat(Driven.value(all, "rise-when-slowing")).isCloseTo(1.6, within(0.05));
        } else {
            assertThat(Driven.find(all, "rise-when-slowing").isPresent()).isEqualTo(slows);
        }
    }

    /** Too much is 15.05 V at 20 °C and 8 mV less a kelvin; low is 13.0 V and 3 mV less. */
    @ParameterizedTest
    @CsvSource({
        "-20, 15.3, 0, 0",
        "-20, 15.45, 100, 0",
        "40, 14.8, 0, 0",
        "40, 14.95, 100, 0",
        "-20, 13.1, 0, 100",
        "40, 12.96, 0, 0",
        "40, 12.9, 0, 100"
    })
    void tooMuchAndTooLittleGoWithTheTemperature(double celsius, double volts, double over, double low) {
        Made made = Driven.volts(12.7, t -> volts).with(Channel.AMBIENT, t -> celsius);
        DriveQuantities all = Driven.measured(made);
        assertThat(Driven.value(all, "over-voltage-share")).isCloseTo(over, within(1.0));
        assertThat(Driven.find(all, "low-running-voltage-share").isPresent())
                .as("a source far too high is not asked whether it is too low")
                .isEqualTo(over < 50);
        Driven.find(all, "low-running-voltage-share")
                .ifPresent(share -> assertThat(share.value()).isCloseTo(low, within(1.0)));
    }

    /** More than 8 A for 70 Ah is unsupported; without a clamp it is 0.15 V under the rest voltage. */
    @ParameterizedTest
    @CsvSource({"100, -11, 0", "100, -12, 100", "40, -5, 100", "40, -4, 0"})
    void whatABatteryCarriesAloneGoesWithItsSize(double capacityAh, double amperes, double share) {
        DriveQuantities all =
                Driven.measured(Driven.clamped(12.7, t -> 12.3, t -> amperes), Driven.reference(capacityAh, 20));
        assertThat(Driven.value(all, "unsupported-share")).isCloseTo(share, within(1.0));
    }

    @Test
    void withoutAClampABatteryAloneLiesUnderItsRest() {
        DriveQuantities all = Driven.measured(Driven.volts(12.7, t -> t % 60 < 45 ? 12.5 : 12.6));
        assertThat(Driven.value(all, "unsupported-share")).isCloseTo(75, within(3.0));
    }

    /** A vehicle that reports less than 68 % needs charge: its answer is the time at charging voltage. */
    @Test
    void theAnswerToANeedThatTheVehicleReports() {
        Made lifted = Driven.volts(12.7, t -> t % 60 < 42 ? 14.3 : 12.7);
        assertThat(Driven.value(Driven.measured(lifted.with(Channel.REPORTED_SOC, t -> 60)), "answer-to-reported-need"))
                .isCloseTo(70, within(4.0));
        Made charged = Driven.clamped(12.7, t -> 13.1, t -> 6).with(Channel.REPORTED_SOC, t -> 60);
        assertThat(Driven.value(Driven.measured(charged), "answer-to-reported-need"))
                .isZero();
        assertThat(Driven.find(Driven.measured(lifted.with(Channel.REPORTED_SOC, t -> 78)), "answer-to-reported-need"))
                .isEmpty();
    }

    @Test
    void whatALowBatteryIsLiftedToIsTold() {
        assertThat(Driven.value(Driven.measured(Driven.volts(12.1, t -> 14.3)), "lift-when-low"))
                .isCloseTo(14.3, within(0.01));
        assertThat(Driven.find(Driven.measured(Driven.volts(12.9, t -> 14.3)), "lift-when-low"))
                .isEmpty();
    }

    /**
     * The first start has a minimum voltage if it is sampled fast enough for the deepest point to be seen; a start of a
     * battery that came in low says nothing about the battery if it sags below the limit.
     */
    @ParameterizedTest
    @CsvSource({
        "12.7, 20, 9.9, true",
        "12.7, 2, 9.9, false",
        "12.7, 2, 9.0, false",
        "12.1, 20, 9.9, true",
        "12.1, 20, 9.0, false"
    })
    void theFirstStartTellsItsLeastVoltage(double rest, double hertz, double least, boolean told) {
        Made made = Made.at(hertz, 300)
                .with(
                        Channel.MEASURED_V,
                        t -> t < 60 ? rest : t < 61.5 ? least + Math.round(t * hertz) % 2 * 0.1 : 14.2)
                .with(Channel.ENGINE_RPM, t -> t < 61.5 ? 0 : 900);
        var found = Driven.find(Driven.measured(made), "cranking-minimum");
        assertThat(found.isPresent()).isEqualTo(told);
        found.ifPresent(v -> assertThat(v.value()).isCloseTo(least, within(0.001)));
    }
}
