package org.voltdocket.diagnosis.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Made;

/** A signal that is told late by a known time. */
class DelayTest {

    private static final int HERTZ = 10;
    private static final int SECONDS = 600;

    private final double[] current = Made.steps(new Random(5), HERTZ * (SECONDS + 10), -30, 10, 20, 120);

    private double current(double atS) {
        return current[Math.max(0, (int) Math.round(HERTZ * atS))];
    }

    private double volts(double atS) {
        return 12.4 + 0.012 * current(atS);
    }

    private static double rounded(double value, double step) {
        return step * Math.round(value / step);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.4, 1, 1.7, 2.5, 3.2, 4})
    void aVoltageToldLateComesBack(double late) {
        Made made = Made.at(HERTZ, SECONDS)
                .with(Channel.MEASURED_V, this::volts)
                .with(Channel.REPORTED_V, t -> rounded(volts(t - late), 0.01));
        assertThat(Delay.of(made.recording(), Channel.REPORTED_V)).isCloseTo(late, within(0.3));
    }

    /** A channel polled once a second is held half a second longer on average: that is delay too. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.6, 1.5, 2.4, 3.3})
    void aCurrentPolledOnceASecondComesBackFromTheClamp(double late) {
        Made made = Made.at(HERTZ, SECONDS)
                .with(Channel.MEASURED_V, this::volts)
                .with(Channel.MEASURED_A, this::current)
                .with(Channel.REPORTED_A, HERTZ, t -> 3 + rounded(current(t - late), 0.1));
        assertThat(Delay.of(made.recording(), Channel.REPORTED_A)).isCloseTo(late + 0.5, within(0.3));
    }

    private static double smooth(double atS) {
        return 12.4 + 0.3 * Math.sin(2.1 * atS) + 0.2 * Math.sin(3.3 * atS + 1) + 0.2 * Math.sin(1.27 * atS + 2);
    }

    /** Between the steps of a quarter of a second the parabola through the best and its neighbours tells the rest. */
    @ParameterizedTest
    @ValueSource(doubles = {0.9, 1.0, 1.1, 1.2, 2.05, 5.7})
    void aSmoothCourseTellsItsDelayWithinAFewHundredths(double late) {
        Made made = Made.at(20, SECONDS)
                .with(Channel.MEASURED_V, DelayTest::smooth)
                .with(Channel.REPORTED_V, t -> smooth(t - late));
        // a channel held at the middle of a step, a median over the step: a sample of 50 ms between them
        assertThat(Delay.of(made.recording(), Channel.REPORTED_V)).isCloseTo(late, within(0.06));
    }

    /** The clamp tells a current's delay even where the voltage shows nothing of it; without it nothing is told. */
    @Test
    void aCurrentIsComparedWithTheClampAndNotWithTheVoltage() {
        double[] other = Made.noise(new Random(9), HERTZ * SECONDS + 1, 0.2, 0.5);
        Made made = Made.at(HERTZ, SECONDS)
                .with(Channel.MEASURED_V, t -> 12 + other[(int) Math.round(HERTZ * t)])
                .with(Channel.REPORTED_A, t -> current(t - 2));
        assertThat(Delay.of(made.recording(), Channel.REPORTED_A)).isZero();
        made.with(Channel.MEASURED_A, this::current);
        assertThat(Delay.of(made.recording(), Channel.REPORTED_A)).isCloseTo(2, within(0.3));
    }

    /** A voltage has no clamp to be compared with. */
    @Test
    void aVoltageIsComparedWithTheVoltageThoughThereIsAClamp() {
        double[] other = Made.noise(new Random(9), HERTZ * SECONDS + 1, 20, 0.5);
        Made made = Made.at(HERTZ, SECONDS)
                .with(Channel.MEASURED_V, this::volts)
                .with(Channel.MEASURED_A, t -> other[(int) Math.round(HERTZ * t)])
                .with(Channel.REPORTED_V, t -> volts(t - 2));
        assertThat(Delay.of(made.recording(), Channel.REPORTED_V)).isCloseTo(2, within(0.3));
    }

    /** A start pulls both down by volts at one moment more than all else together; that alone must not decide. */
    @Test
    void aFewLargeSpikesThatComeTogetherDoNotHideTheDelayOfTheRest() {
        Made made = Made.at(HERTZ, SECONDS)
                .with(Channel.MEASURED_V, t -> volts(t) - (t % 100 >= 50 && t % 100 < 51 ? 40 : 0))
                .with(Channel.REPORTED_V, t -> volts(t - 3) - (t % 100 >= 50 && t % 100 < 51 ? 40 : 0));
        assertThat(Delay.of(made.recording(), Channel.REPORTED_V)).isCloseTo(3, within(0.3));
    }

    @Test
    void whatDoesNotResembleTellsNoDelay() {
        double[] other = Made.noise(new Random(9), HERTZ * SECONDS + 1, 0.2, 0.5);
        Made made = Made.at(HERTZ, SECONDS)
                .with(Channel.MEASURED_V, this::volts)
                .with(Channel.REPORTED_V, t -> 12 + other[(int) Math.round(HERTZ * t)]);
        assertThat(Delay.of(made.recording(), Channel.REPORTED_V)).isZero();
        assertThat(Delay.of(made.recording(), Channel.REPORTED_A)).isZero();
    }
}
