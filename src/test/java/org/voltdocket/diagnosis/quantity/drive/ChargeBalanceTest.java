package org.voltdocket.diagnosis.quantity.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.RestVoltage;
import org.voltdocket.kernel.Interval;

/** The charge before a drive, what moved, and what is there after it: a battery of 70 Ah that rests at 12.5 V. */
class ChargeBalanceTest {

    /** The engine runs from 61 to 600 s and the battery takes 12 A; then the car stands and it rests at a voltage. */
    private static Made parked(double restsAt, double seconds) {
        return Made.at(2, seconds)
                .with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 9.7 : t < 600 ? 14.3 : restsAt)
                .with(Channel.MEASURED_A, t -> t < 60 || t >= 600 ? -0.02 : 12)
                .with(Channel.ENGINE_RPM, t -> t < 61 || t >= 600 ? 0 : 1800)
                .with(Channel.SPEED, t -> t < 70 || t > 595 ? 0 : 60);
    }

    private static double wide(Interval interval) {
        return interval.high() - interval.low();
    }

    /** 12 A for 19 of 20 minutes are 3.8 Ah, known to 0.2 A of the clamp, and 5.4 points of 70 Ah, give or take 20 %, more than before. */
    @Test
    void whatMovedIsCountedOntoTheChargeBefore() {
        DriveQuantities all = Driven.measured(Driven.clamped(12.5, t -> 14.3, t -> 12));
        Interval start = all.estimates().get("socStartPct");
        Interval net = all.estimates().get("netChargeAh");
        Interval end = all.estimates().get("socEndPct");
        assertThat(Driven.find(all, "charge-before-drive")).contains(start);
        assertThat(Driven.find(all, "rest-left")).isPresent();
        assertThat(start.value())
                .isCloseTo(
                        RestVoltage.charge(Chemistry.AGM, 12.5, 20, 0.03, 0.08).value(), within(1.0));
        assertThat(net.value()).isCloseTo(12 * 1140 / 3600.0, within(0.02));
        assertThat(net.standardError()).isCloseTo(0.2 * 1200 / 3600, within(0.001));
        double points = 100 / 70.0;
        double capacity = Interval.Z95 * 0.2 * points * net.value();
        double reach = Math.hypot(points * (net.high() - net.value()), capacity);
        assertThat(end.value()).isCloseTo(start.value() + points * net.value(), within(1e-9));
        assertThat(end.value() - end.low()).isCloseTo(Math.hypot(start.value() - start.low(), reach), within(1e-6));
        assertThat(end.high() - end.value()).isCloseTo(Math.hypot(start.high() - start.value(), reach), within(1e-6));
    }

    /** A charge lies between nothing and all, however much is counted. */
    @Test
    void noBatteryHoldsMoreThanAll() {
        Interval end = Driven.measured(Driven.clamped(12.85, t -> 14.3, t -> 60))
                .estimates()
                .get("socEndPct");
        assertThat(end.value()).isEqualTo(100);
        assertThat(end.high()).isEqualTo(100);
    }

    /** A clamp that was off for more than half of the drive counts nothing; one off for a third, by its mean. */
    @Test
    void aClampThatIsMostlyOffCountsNothing() {
        Made mostly = Driven.clamped(12.5, t -> 14.3, t -> t > 400 ? Double.NaN : 12);
        assertThat(Driven.measured(mostly).estimates()).doesNotContainKeys("netChargeAh", "socEndPct");
        Made partly = Driven.clamped(12.5, t -> 14.3, t -> t > 800 ? Double.NaN : 12);
        assertThat(Driven.measured(partly).estimates().get("netChargeAh").value())
                .isCloseTo(12 * 740 / 800.0 / 3, within(0.02));
    }

    /** A rest after the drive is weighed with what was counted: between the two, and known better than by counting. */
    @Test
    void aRestAfterTheDriveIsWeighedWithTheCount() {
        DriveQuantities all = Driven.measured(parked(12.55, 1500));
        Interval rested = Driven.find(all, "charge-after-drive").orElseThrow();
        Interval end = all.estimates().get("socEndPct");
        double counted = all.estimates().get("socStartPct").value()
                + all.estimates().get("netChargeAh").value() / 0.7;
        assertThat(Math.abs(rested.value() - counted)).as("they agree").isLessThan(15);
        assertThat(end.value()).isBetween(Math.min(rested.value(), counted), Math.max(rested.value(), counted));
        assertThat(wide(end)).isLessThan(wide(rested));
        DriveQuantities apart = Driven.measured(parked(12.95, 1500));
        Interval full = Driven.find(apart, "charge-after-drive").orElseThrow();
        Interval torn = apart.estimates().get("socEndPct");
        assertThat(torn.value()).isBetween(end.value(), full.value());
        assertThat(torn.low()).as("wider where they disagree").isLessThan(full.low());
    }

    @Test
    void aShortStandAfterTheDriveTellsNoRest() {
        assertThat(Driven.find(Driven.measured(parked(12.6, 630)), "charge-after-drive"))
                .isEmpty();
        assertThat(Driven.find(Driven.measured(Driven.clamped(12.5, t -> 14.3, t -> 12)), "charge-after-drive"))
                .isEmpty();
    }
}
