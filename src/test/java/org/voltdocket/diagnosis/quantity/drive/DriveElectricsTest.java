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
import org.voltdocket.kernel.Interval;

/** Resistances, voltmeters and current sensors of a drive. */
class DriveElectricsTest {

    private final double[] load = Made.steps(new Random(9), Driven.SECONDS + 1, -40, -5, 2, 10);
    private final double[] flow = Made.steps(new Random(4), Driven.SECONDS + 1, -25, 20, 20, 60);
    private final double[] level = Made.steps(new Random(5), Driven.SECONDS + 1, -0.4, 0.9, 40, 120);

    private static double of(double[] steps, double t) {
        return steps[(int) t];
    }

    /** A battery of 5.5 mΩ behind loads, and a charging source above 12.9 V that would make 20 mΩ of it. */
    private Made loaded() {
        DoubleUnaryOperator source = t -> t < 600 ? 12.6 + 0.0055 * of(load, t) : 14.2 + 0.020 * of(load, t);
        return Driven.clamped(12.6, source, t -> of(load, t));
    }

    @Test
    void stepsUnderAChargingVoltageTellNoResistance() {
        DriveQuantities all = Driven.measured(loaded());
        Interval steps = Driven.find(all, "resistance-by-steps").orElseThrow();
        assertThat(steps.value()).isCloseTo(5.5, within(0.2));
        assertThat(steps.standardError()).as("a clamp's scale at least").isGreaterThanOrEqualTo(0.015 * 5.4);
        assertThat(all.estimates().get("internalResistanceMilliohm")).isEqualTo(steps);
        Interval rated = Driven.find(all, "resistance-by-rating").orElseThrow();
        assertThat(rated.value()).as("times 700 A").isCloseTo(0.7 * steps.value(), within(1e-9));
        assertThat(rated.low()).isCloseTo(0.7 * steps.low(), within(1e-9));
        assertThat(rated.high()).isCloseTo(0.7 * steps.high(), within(1e-9));
    }

    /** Steps under 3 A are lost in what else moves the voltage, and a voltage that falls with charge is no resistance. */
    @Test
    void smallStepsAndFallingOnesTellNoResistance() {
        Made small = Driven.clamped(12.6, t -> 12.6 + 0.0055 * (t % 20 < 10 ? -5 : -7.5), t -> t % 20 < 10 ? -5 : -7.5);
        Made falling = Driven.clamped(12.6, t -> 12.6 - 0.0055 * of(load, t), t -> of(load, t));
        for (Made made : new Made[] {small, falling}) {
            assertThat(Driven.find(Driven.measured(made), "resistance-by-steps"))
                    .isEmpty();
            assertThat(Driven.find(Driven.measured(made), "resistance-by-rating"))
                    .isEmpty();
        }
    }

    /** The posts under a level that moves by itself and a battery of 6 mΩ; the vehicle's voltmeter by bias, gain and cable. */
    private Made reporting(double bias, double gain, double ohm) {
        DoubleUnaryOperator posts = t -> 13.0 + of(level, t) + 0.006 * of(flow, t);
        return Driven.clamped(12.5, posts, t -> of(flow, t))
                .with(
                        Channel.REPORTED_V,
                        t -> t < 61
                                ? 12.5 + bias
                                : 13 + bias + gain * (posts.applyAsDouble(t) - 13) + ohm * of(flow, t));
    }

    /** A gain within 5 % is what delays leave: the cable is told with it left in, and the gain all the same. */
    @Test
    void aSmallGainDoesNotHideACable() {
        DriveQuantities all = Driven.measured(reporting(0, 0.97, 0.030));
        assertThat(Driven.value(all, "harness-resistance")).isCloseTo(30, within(2.0));
        assertThat(Driven.value(all, "reported-voltage-gain")).isCloseTo(0.97, within(0.02));
    }

    /** Without any current a voltmeter that lies the more the higher the voltage is told by the voltage alone. */
    @Test
    void withoutACurrentAVoltmeterIsToldByTheVoltage() {
        DoubleUnaryOperator posts = t -> 13.0 + of(level, t);
        Made made = Driven.volts(12.5, posts)
                .with(Channel.REPORTED_V, t -> t < 61 ? 12.5 : 13 - 0.2 + 0.8 * (posts.applyAsDouble(t) - 13));
        DriveQuantities all = Driven.measured(made);
        assertThat(Driven.value(all, "reported-voltage-gain")).isCloseTo(0.8, within(0.02));
        assertThat(Driven.value(all, "reported-voltage-bias")).isCloseTo(-0.2, within(0.02));
        assertThat(Driven.find(all, "harness-resistance")).isEmpty();
    }

    /**
     * The source lifts the voltage by 1 V and drives 10 A into the battery: 20 mΩ in between add 0.2 V to a volt, and no voltmeter
     * is right at rest and so far off above it.
     */
    @Test
    void withoutACurrentACableIsToldByADifferenceThatGrowsWithTheVoltage() {
        DoubleUnaryOperator posts = t -> 13.0 + of(level, t);
        Made made = Driven.volts(12.5, posts)
                .with(Channel.REPORTED_V, t -> t < 61 ? 12.5 : 13 + 1.2 * (posts.applyAsDouble(t) - 13));
        DriveQuantities all = Driven.measured(made);
        assertThat(Driven.value(all, "gap-by-voltage")).isCloseTo(0.2, within(0.02));
        assertThat(Driven.find(all, "reported-voltage-gain")).isEmpty();
    }

    /** What varies too little tells neither gain nor cable, only that the two voltages lie apart. */
    @Test
    void aLevelVoltageTellsABiasOnly() {
        Made made = Driven.clamped(12.5, t -> 14, t -> 3).with(Channel.REPORTED_V, t -> (t < 61 ? 12.5 : 14) - 0.4);
        DriveQuantities all = Driven.measured(made);
        assertThat(Driven.value(all, "reported-voltage-bias")).isCloseTo(-0.4, within(0.01));
        assertThat(all.estimates()).doesNotContainKeys("voltageGain", "harnessResistanceMilliohm");
    }

    /** A swing of 12 A tells a cable of 70 Ah, which asks for 8, and none of 140 Ah, which asks for 16. */
    @ParameterizedTest
    @CsvSource({"70, true", "140, false"})
    void howMuchACurrentMustSwingGoesWithTheBattery(double capacityAh, boolean told) {
        DoubleUnaryOperator amperes = t -> t % 80 < 40 ? -6 : 6;
        Made made = Driven.clamped(12.5, t -> 13 + 0.006 * amperes.applyAsDouble(t), amperes)
                .with(Channel.REPORTED_V, t -> t < 61 ? 12.5 : 13 + 0.036 * amperes.applyAsDouble(t));
        DriveQuantities all = Driven.measured(made, Driven.reference(capacityAh, 20));
        assertThat(Driven.find(all, "harness-resistance").isPresent()).isEqualTo(told);
    }

    /** The engine stands for the first five minutes: awake with 6 A for 120 s, then asleep; the sensor reads so much too high. */
    private Made sleeping(boolean clamp, double offset) {
        DoubleUnaryOperator truth = t -> t < 120 ? -6 : t < 300 ? -0.05 : of(flow, t);
        Made made = Made.at(2, Driven.SECONDS)
                .with(Channel.MEASURED_V, t -> t < 300 ? 12.5 : t < 301 ? 9.7 : 13.2 + 0.006 * of(flow, t))
                .with(Channel.ENGINE_RPM, t -> t < 301 ? 0 : 1800)
                .with(Channel.REPORTED_A, t -> offset + truth.applyAsDouble(t));
        return clamp ? made.with(Channel.MEASURED_A, truth) : made;
    }

    /** A clamp tells the offset, and where the sensor was seen asleep the two are set against each other. */
    @Test
    void aClampTellsTheSensorsOffsetAndGain() {
        DriveQuantities all = Driven.measured(sleeping(true, 2));
        Interval offset = Driven.find(all, "sensor-offset-by-clamp").orElseThrow();
        assertThat(offset.value()).isCloseTo(2, within(0.2));
        assertThat(all.estimates().get("sensorOffsetA")).isEqualTo(offset);
        assertThat(Driven.value(all, "sensor-gain")).isCloseTo(1, within(0.02));
        assertThat(all.estimates()).containsKey("sensorGain");
        double asleep = Driven.value(all, "sensor-asleep-in-drive");
        assertThat(asleep).isCloseTo(2.05, within(0.1));
        assertThat(Driven.value(all, "offset-ways-disagree")).isCloseTo(offset.value() - asleep, within(1e-9));
    }

    /** Without one all other ways are said, and all of them together are the estimate. */
    @Test
    void withoutAClampTheOtherWaysTellTheOffsetTogether() {
        DriveQuantities all = Driven.measured(sleeping(false, 2));
        assertThat(Driven.find(all, "sensor-offset-by-clamp")).isEmpty();
        assertThat(Driven.value(all, "sensor-asleep-in-drive")).isCloseTo(2.05, within(0.1));
        Interval together = Driven.find(all, "sensor-offset-together").orElseThrow();
        assertThat(together.low()).isLessThan(2);
        assertThat(together.high()).isGreaterThan(2);
        assertThat(all.estimates().get("sensorOffsetA")).isEqualTo(together);
    }

    /** Most sensors are right: an offset that may be none is not taken off what it counts, a proven one is. */
    @Test
    void onlyAProvenOffsetIsTakenOffTheCount() {
        double reads = 0;
        for (int t = 0; t <= Driven.SECONDS; t++) {
            reads += (t < 120 ? -6 : t < 300 ? -0.05 : of(flow, t)) / (Driven.SECONDS + 1);
        }
        double hours = Driven.SECONDS / 3600.0;
        DriveQuantities honest = Driven.measured(sleeping(false, 0));
        Interval none = honest.estimates().get("sensorOffsetA");
        assertThat(none.low()).isLessThan(0);
        assertThat(none.high()).isGreaterThan(0);
        assertThat(honest.estimates().get("netChargeAh").value()).isCloseTo(reads * hours, within(0.02));
        DriveQuantities wrong = Driven.measured(sleeping(false, 4));
        Interval proven = wrong.estimates().get("sensorOffsetA");
        assertThat(proven.low()).isGreaterThan(0);
        assertThat(wrong.estimates().get("netChargeAh").value())
                .isCloseTo((reads + 4 - proven.value()) * hours, within(0.02));
    }
}
