package org.voltdocket.diagnosis.quantity.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.kernel.Interval;

/** When a vehicle with its engine off counts as asleep, by what its sensor reads until the start at 200 s. */
class SleepingSensorOffsetTest {

    private static final int START_S = 200;

    private static Optional<Interval> found(DoubleUnaryOperator beforeStart) {
        Made made = Made.at(2, 600)
                .with(Channel.MEASURED_V, t -> t < START_S ? 12.5 : t < START_S + 1 ? 9.7 : 14.2)
                .with(Channel.ENGINE_RPM, t -> t < START_S + 1 ? 0 : 900)
                .with(Channel.REPORTED_A, t -> t < START_S ? beforeStart.applyAsDouble(t) : 7 + t % 5);
        return SleepingSensorOffset.of(new DriveSignals(made.recording(), 20));
    }

    /** Asleep it takes 0.1 A, at most 1.5, and the reading is good to 0.1: so much more may the sensor read too high. */
    @Test
    void theReadingAsleepIsTheOffsetLessWhatIsTaken() {
        Interval offset = found(t -> t < 90 ? -6 : 2).orElseThrow();
        assertThat(offset.value()).isCloseTo(2.1, within(1e-6));
        assertThat(offset.low()).isCloseTo(1.9, within(1e-6));
        assertThat(offset.high()).isCloseTo(3.6, within(1e-6));
    }

    /** Loads of 1.5 A or more must have fallen off: less than that may all still be on. */
    @ParameterizedTest
    @CsvSource({"1.4, false", "1.6, true"})
    void loadsMustHaveFallenOff(double falls, boolean asleep) {
        assertThat(found(t -> t < 90 ? 2 - falls : 2).isPresent()).isEqualTo(asleep);
    }

    /** It must stay put for three quarters of a minute, within 0.6 A. */
    @ParameterizedTest
    @CsvSource({"40, 0, false", "75, 0, true", "100, 0.25, true", "100, 0.35, false"})
    void whatIsAsleepStaysPut(int lastsS, double sways, boolean asleep) {
        DoubleUnaryOperator reading =
                t -> t >= 190 - lastsS && t < 190 ? 2 + (t % 20 < 10 ? sways : -sways) : -6 + t % 30 / 10;
        assertThat(found(reading).isPresent()).isEqualTo(asleep);
    }

    /** A load that comes on later shows that it was asleep before; of two sleeps the one with the least load counts. */
    @Test
    void aLaterLoadShowsThatItSlept() {
        assertThat(found(t -> t < 90 ? 2 : -6).orElseThrow().value()).isCloseTo(2.1, within(1e-6));
        assertThat(found(t -> t < 70 ? 0 : t < 80 ? -6 : 1).orElseThrow().value())
                .isCloseTo(1.1, within(1e-6));
    }

    @Test
    void aRunningEngineAndASilentSensorTellNothing() {
        Made silent = Made.at(2, 600).with(Channel.MEASURED_V, t -> 12.5);
        assertThat(SleepingSensorOffset.of(new DriveSignals(silent.recording(), 20)))
                .isEmpty();
        Made running = Made.at(2, 600)
                .with(Channel.MEASURED_V, t -> 14.2)
                .with(Channel.ENGINE_RPM, t -> 900)
                .with(Channel.REPORTED_A, t -> t < 300 ? -6 : 2);
        assertThat(SleepingSensorOffset.of(new DriveSignals(running.recording(), 20)))
                .isEmpty();
    }
}
