package org.voltdocket.diagnosis.quantity.standing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.kernel.Interval;

/** A parked vehicle with a known drain: awake with 4 A for ten minutes, asleep after. */
class StandingQuantitiesTest {

    private static final double HOURS = 8;
    private static final double CAPACITY_AH = 60;

    private static final MeasurementContext REFERENCE = new MeasurementContext(
            new Facts(
                    new Facts.BatteryFacts(
                            Chemistry.FLOODED, CAPACITY_AH, 540.0, CrankingStandard.EN, null, null, null, null),
                    null,
                    null,
                    null),
            20);

    private final double[] noise = Made.noise(new Random(2), (int) (HOURS * 3600) + 1, 0.01, 0.3);

    private static double flow(double t, double drain) {
        return t < 600 ? -4 : -drain;
    }

    /** Rest voltage by the table's slope, relaxing by 150 mV with 40 min after a drive. */
    private double volts(double t, double drain, double surface) {
        double perAh = (12.45 - 12.24) / 25 * 100 / CAPACITY_AH;
        double fallen = perAh * drain * t / 3600;
        return 12.42 - fallen + surface * Math.exp(-t / 2400) + 0.2 * noise[(int) t];
    }

    private static Map<String, Interval> measured(Made made) {
        return StandingQuantities.of(made.as(EvidenceKind.STANDING_RECORDING).evidence(), REFERENCE)
                .measurements()
                .stream()
                .collect(Collectors.toMap(Measurement::quantity, Measurement::value));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.02, 0.05, 0.12, 0.6, 2})
    void theClampTellsTheDrainOnceTheVehicleSleeps(double drain) {
        Made made = Made.at(0.1, HOURS * 3600)
                .with(Channel.MEASURED_V, t -> volts(t, drain, 0.15))
                .with(Channel.MEASURED_A, t -> flow(t, drain) + noise[(int) t]);
        Interval found = measured(made).get("standing-drain");
        assertThat(found.value()).isCloseTo(drain, within(0.005));
        assertThat(found.high() - found.low())
                .as("95 % of a zero error of 20 mA")
                .isCloseTo(0.0784, within(0.004));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.2, 0.5, 1.2})
    void theVoltageTellsTheDrainThroughItsRelaxation(double drain) {
        Made made = Made.at(0.1, HOURS * 3600).with(Channel.MEASURED_V, t -> volts(t, drain, 0.15));
        Interval found = measured(made).get("standing-drain-by-voltage");
        assertThat(found.low()).isLessThanOrEqualTo(drain);
        assertThat(found.high()).isGreaterThanOrEqualTo(drain);
        assertThat(found.value()).isCloseTo(drain, within(0.1 + 0.15 * drain));
    }

    @Test
    void aShortRecordingTellsNoDrainByVoltage() {
        Made made = Made.at(0.1, 2 * 3600).with(Channel.MEASURED_V, t -> volts(t, 1, 0.15));
        assertThat(measured(made)).doesNotContainKey("standing-drain-by-voltage");
    }

    @ParameterizedTest
    @ValueSource(doubles = {-2.5, 0, 0.4, 3})
    void theSensorsOffsetAsleepIsWhatItSaysBesideTheDrain(double offset) {
        Made made = Made.at(0.1, HOURS * 3600)
                .with(Channel.MEASURED_V, t -> volts(t, 0.3, 0.15))
                .with(Channel.MEASURED_A, t -> flow(t, 0.3) + noise[(int) t])
                .with(Channel.REPORTED_A, t -> offset + flow(t, 0.3));
        Interval found = measured(made).get("sensor-at-rest");
        assertThat(found.value()).isCloseTo(offset, within(0.01));
        assertThat(found.low()).isLessThan(offset);
        assertThat(found.high()).isGreaterThan(offset);
    }

    /** Asleep at 20 mA; from three hours on awake with 2 A for two minutes of every half hour. */
    private Map<String, Interval> waking(double amperes, double secondsApart) {
        return measured(Made.at(0.5, HOURS * 3600)
                .with(Channel.MEASURED_V, t -> volts(t, 0.02, 0.15))
                .with(Channel.MEASURED_A, t -> {
                    double within = (t - 10_800) % 1800;
                    boolean awake = t >= 10_800
                            && t < 28_700
                            && (within < 60 || within >= 60 + secondsApart && within < 120 + secondsApart);
                    return (t < 600 ? -4 : awake ? -amperes : -0.02) + 0.1 * noise[(int) t];
                }));
    }

    /** Ten half hours: 2 A for 120 s of 1800 are 240 As beside some 34 As asleep, and 20 mA in the hours before. */
    @Test
    void wakeUpsAreCountedWithTheirLengthAndShare() {
        Map<String, Interval> found = waking(2, 0);
        assertThat(found.get("wake-ups")).isEqualTo(Interval.exact(10));
        assertThat(found.get("wake-up-length").value()).isCloseTo(120, within(4.0));
        assertThat(found.get("wake-up-share").value()).isCloseTo(100 * 2400.0 / (2400 + 0.02 * 27_000), within(3.0));
    }

    /** A pause of half a minute ends no wake-up, a longer one does; a quarter of an ampere more is not awake. */
    @Test
    void burstsCloseTogetherAreOneWakeUp() {
        assertThat(waking(2, 26).get("wake-ups")).isEqualTo(Interval.exact(10));
        assertThat(waking(2, 40).get("wake-ups")).isEqualTo(Interval.exact(20));
        assertThat(waking(0.2, 0).get("wake-ups")).isEqualTo(Interval.exact(0));
    }

    /** In the first hour a vehicle may be awake most of the time, and asleep it may take 0.3 A: neither is a wake-up. */
    @Test
    void whatIsAsleepIsToldByTheSleepItself() {
        double awakeFirstS = 3000;
        Map<String, Interval> found = measured(Made.at(2, HOURS * 3600)
                .with(Channel.MEASURED_V, t -> volts(t, 0.3, 0.15))
                .with(
                        Channel.MEASURED_A,
                        t -> t < awakeFirstS ? -4 : t >= 10_800 && t < 28_700 && t % 3600 < 60 ? -2 : -0.3));
        assertThat(found.get("wake-ups")).as("after 3, 4, 5, 6 and 7 hours").isEqualTo(Interval.exact(5));
        assertThat(found.get("wake-up-length").value()).isCloseTo(60, within(1.0));
    }

    /** Known to a step between samples at either end: twice two seconds at a sample every two seconds. */
    @Test
    void theLengthOfAWakeUpIsKnownToTheSampling() {
        Map<String, Interval> found = waking(2, 0);
        Interval length = found.get("wake-up-length");
        assertThat(length.high() - length.value()).isCloseTo(4, within(0.01));
        assertThat(length.value() - length.low()).isCloseTo(4, within(0.01));
    }

    @Test
    void tooFewSamplesTellNoWakeUps() {
        Made made = Made.at(1 / 300.0, HOURS * 3600)
                .with(Channel.MEASURED_V, t -> volts(t, 0.02, 0.15))
                .with(Channel.MEASURED_A, t -> t % 1800 < 300 ? -2 : -0.02);
        assertThat(measured(made)).containsKey("standing-drain").doesNotContainKey("wake-ups");
    }

    /** A drain that comes and goes is known less well than a steady one: its own scatter joins the clamp's 20 mA. */
    @Test
    void aDrainThatScattersIsKnownLessWell() {
        double[] scatter = Made.noise(new Random(12), (int) (HOURS * 3600) + 1, 1.5, 0);
        Made made = Made.at(0.1, HOURS * 3600)
                .with(Channel.MEASURED_V, t -> volts(t, 0.3, 0.15))
                .with(Channel.MEASURED_A, t -> -0.3 + scatter[(int) t]);
        Interval found = measured(made).get("standing-drain");
        double samples = (HOURS - 1) * 360;
        assertThat(found.standardError()).isCloseTo(Math.hypot(0.02, 1.5 / Math.sqrt(samples)), within(0.006));
    }

    /**
     * By voltage alone a drain is known to 30 %, and to what a battery off the charger may still sink: 80 mV in an hour, a
     * sixteenth of it after four, over the slope of the rest voltage, 8.05 mV a point at 60 Ah.
     */
    @ParameterizedTest
    @ValueSource(doubles = {4, 8})
    void theLongerTheVehicleStoodTheBetterTheVoltageTells(double hours) {
        Made made = Made.at(0.1, hours * 3600).with(Channel.MEASURED_V, t -> 12.42 - 0.00805 / 0.6 * 1.0 * t / 3600);
        Interval found = measured(made).get("standing-drain-by-voltage");
        assertThat(found.value()).isCloseTo(1, within(0.01));
        double settling = 0.08 / (hours * hours) / (0.00805 / 0.6);
        assertThat(found.standardError()).isCloseTo(Math.hypot(0.3, settling), within(0.005));
    }

    /** A fall that would take more than 10 A is no drain but a battery failing or a load left on: none is told. */
    @Test
    void aFallTooFastForAnythingAsleepIsNoDrain() {
        Made made = Made.at(0.1, 4 * 3600).with(Channel.MEASURED_V, t -> 12.6 - 0.00805 / 0.6 * 11 * t / 3600);
        assertThat(measured(made)).doesNotContainKey("standing-drain-by-voltage");
    }

    /** Beside a clamp the offset is as well known as the drain; with nothing to tell that it may be 0 to 1 A. */
    @Test
    void theSensorsOffsetAsleepIsAsWellKnownAsTheDrain() {
        Made clamped = Made.at(0.1, HOURS * 3600)
                .with(Channel.MEASURED_V, t -> volts(t, 0.3, 0.15))
                .with(Channel.MEASURED_A, t -> -0.3)
                .with(Channel.REPORTED_A, t -> 1.7);
        Map<String, Interval> both = measured(clamped);
        Interval offset = both.get("sensor-at-rest");
        Interval drain = both.get("standing-drain");
        assertThat(offset.value()).isCloseTo(2.0, within(0.001));
        assertThat(offset.low()).isCloseTo(1.7 + drain.low(), within(1e-6));
        assertThat(offset.high()).isCloseTo(1.7 + drain.high(), within(1e-6));
        Made alone = Made.at(0.1, 2 * 3600)
                .with(Channel.MEASURED_V, t -> volts(t, 0.02, 0.15))
                .with(Channel.REPORTED_A, t -> 1.7);
        Interval vague = measured(alone).get("sensor-at-rest");
        assertThat(vague.value()).isCloseTo(1.75, within(1e-6));
        assertThat(vague.low()).isCloseTo(1.7, within(1e-6));
        assertThat(vague.high()).isCloseTo(2.7, within(1e-6));
    }

    @Test
    void theEstimatesAreThoseOfTheQuantitiesAndAllOfItIsRest() {
        Made made = Made.at(0.1, HOURS * 3600)
                .with(Channel.MEASURED_V, t -> volts(t, 0.3, 0.15))
                .with(Channel.MEASURED_A, t -> flow(t, 0.3))
                .with(Channel.REPORTED_A, t -> 1.7);
        Evidence evidence = made.as(EvidenceKind.STANDING_RECORDING).evidence();
        StandingQuantities all = StandingQuantities.of(evidence, REFERENCE);
        assertThat(all.estimates())
                .containsEntry("standingDrainA", measured(made).get("standing-drain"))
                .containsEntry("sensorOffsetA", measured(made).get("sensor-at-rest"));
        assertThat(all.regimes()).containsExactly(new RegimeSpan(0, HOURS * 3600, Regime.REST));
    }
}
