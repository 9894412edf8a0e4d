package org.voltdocket.diagnosis.regime;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.signal.Grid;

/** To the second where it can be told: when an engine stopped, and what does not make one run. */
class EngineStopsTest {

    private final double[] rough = Made.noise(new Random(4), 20_000, 0.05, 0.3);

    private double running(double t) {
        return 14.2 + rough[(int) Math.round(t * 10)];
    }

    private static boolean[] of(Made made) {
        return of(made.grid());
    }

    private static boolean[] of(Grid grid) {
        return EngineState.running(grid, EngineStartDetector.in(grid));
    }

    /** Rest, a start at 60 s, a stop at 400 s that a restart ends. */
    private Made restarted(double stoodS, DoubleUnaryOperator standing) {
        double again = 400 + stoodS;
        return Made.at(10, again + 300)
                .with(
                        Channel.MEASURED_V,
                        t -> t < 60
                                ? 12.5
                                : t < 61
                                        ? 10
                                        : t >= 400 && t < again
                                                ? standing.applyAsDouble(t - 400)
                                                : t >= again && t < again + 0.8 ? 10.2 : running(t));
    }

    private static void stopsAt400(boolean[] running, int stoodS, int slackS) {
        for (int k = 62; k < running.length; k++) {
            boolean border = Math.abs(k - 400) <= slackS || Math.abs(k - 400 - stoodS) <= 2;
            if (!border) {
                assertThat(running[k]).as("second %s", k).isEqualTo(k < 400 || k > 400 + stoodS);
            }
        }
    }

    /** A source that leaves takes the voltage with it: the stop is known to two seconds, however long it lasts. */
    @ParameterizedTest
    @ValueSource(ints = {12, 40, 150})
    void aStopIsTheStepDownOfTheSource(int stoodS) {
        stopsAt400(of(restarted(stoodS, t -> 12.3)), stoodS, 2);
    }

    /** Surface charge sinks from near the charging voltage: the step is small, and what follows only sinks. */
    @ParameterizedTest
    @ValueSource(ints = {40, 300})
    void aStopIsSeenAboveSurfaceCharge(int stoodS) {
        stopsAt400(of(restarted(stoodS, t -> 12.8 + 0.5 * Math.exp(-t / 30))), stoodS, 6);
    }

    /** Switched off for good: the rest of the recording stands, from two seconds about the step on. */
    @Test
    void theLastStopIsTheStepDownToo() {
        Made made = Made.at(10, 600)
                .with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 10 : t < 400 ? running(t) : 12.7);
        boolean[] on = of(made);
        for (int k = 62; k < on.length; k++) {
            if (Math.abs(k - 400) > 2) {
                assertThat(on[k]).as("second %s", k).isEqualTo(k < 400);
            }
        }
    }

    /** No resting battery keeps more than 13.25 V, and no engine needs to run for less. */
    @ParameterizedTest
    @CsvSource({"13.2, false", "13.3, true"})
    void withoutAStartAChargingVoltageShowsARunningEngine(double volts, boolean runs) {
        Grid grid = Made.at(1, 600).with(Channel.MEASURED_V, t -> volts).grid();
        assertThat(EngineState.seenRunning(grid)).isEqualTo(runs);
    }

    /** Before the first start no engine ran that nobody saw, though its speed is told only later. */
    @Test
    void beforeTheFirstStartTheEngineStands() {
        Made started = Made.at(10, 300)
                .with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 10 : 14.2)
                .with(Channel.ENGINE_RPM, 10, t -> t < 90 ? Double.NaN : 900);
        assertThat(of(started)[30]).isFalse();
        assertThat(of(started)[200]).isTrue();
        Made met = Made.at(10, 300)
                .with(Channel.MEASURED_V, t -> 14.2)
                .with(Channel.ENGINE_RPM, 10, t -> t < 90 ? Double.NaN : 900);
        assertThat(of(met)[30]).as("it ran when it was plugged in").isTrue();
    }

    /** An engine runs above 400 1/min: no starter turns one as fast. */
    @Test
    void aStarterTurnsSlowerThanAnEngineRuns() {
        Made made = Made.at(10, 300)
                .with(Channel.MEASURED_V, t -> 12.4)
                .with(Channel.ENGINE_RPM, 10, t -> t < 100 ? 390 : t < 200 ? 410 : 390);
        boolean[] on = of(made);
        assertThat(on[50]).isFalse();
        assertThat(on[150]).isTrue();
        assertThat(on[250]).isFalse();
    }

    /** Faster than 2 km/h it drives; slower may be the wheel of a car that is pushed, or the last of a signal. */
    @ParameterizedTest
    @CsvSource({"1.5, false", "3, true"})
    void aCarRollingFasterThanAWalkDrives(double kmh, boolean runs) {
        Made made = Made.at(10, 600)
                .with(Channel.MEASURED_V, t -> 12.4)
                .with(Channel.SPEED, 10, t -> t >= 100 && t < 500 ? kmh : 0);
        assertThat(of(made)[300]).isEqualTo(runs);
    }

    /** Plugged in at a voltage that no resting battery has, it ran; at one that a charged battery has, it stood. */
    @ParameterizedTest
    @CsvSource({"14.0, true", "13.0, false"})
    void whatWasBeforeTheFirstStart(double before, boolean ran) {
        Made made = Made.at(10, 900)
                .with(
                        Channel.MEASURED_V,
                        t -> t < 200
                                ? before + (ran ? running(t) - 14.2 : 0)
                                : t < 300 ? 12.5 : t < 301 ? 10 : running(t));
        boolean[] on = of(made);
        assertThat(on[100]).isEqualTo(ran);
        assertThat(on[250]).isFalse();
        assertThat(on[400]).isTrue();
    }

    /** However late the engine speed is told, up to five seconds, the delay seen at the start is taken off the stop too. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1, 2, 3, 4, 5})
    void theDelayOfTheEngineSpeedIsTakenOff(double late) {
        Made made = Made.at(10, 600)
                .with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 10 : t < 400 ? running(t) : 12.7)
                .with(Channel.ENGINE_RPM, 5, t -> t - late >= 61 && t - late < 400 ? 900 : 0);
        boolean[] on = of(made);
        for (int k = 0; k < on.length; k++) {
            if (Math.abs(k - 61) > 1 && Math.abs(k - 400) > 1) {
                assertThat(on[k]).as("second %s", k).isEqualTo(k > 61 && k < 400);
            }
        }
    }

    /** Without a step in voltage the parked car is found by its calm, whether it stands for minutes or for 40 s. */
    @ParameterizedTest
    @ValueSource(ints = {500, 40})
    void aCarParkedWithADeadSourceIsFoundByItsCalm(int stoodS) {
        Made made = Made.at(10, 900 + stoodS).with(Channel.MEASURED_V, t -> {
            boolean crank = t >= 60 && t < 61 || t >= 600 + stoodS && t < 601 + stoodS;
            boolean calm = t < 60 || t >= 600 && t < 600 + stoodS;
            return crank ? 10 : calm ? 12.5 : 12.5 + rough[(int) Math.round(t * 10)];
        });
        boolean[] on = of(made);
        assertThat(on[570]).isTrue();
        assertThat(on[600 + stoodS / 2]).isFalse();
        assertThat(on[600 + stoodS - 3]).isFalse();
        assertThat(on[610 + stoodS]).isTrue();
    }

    /** A stop of nine seconds at the end of a recording is found as one of thirty. */
    @ParameterizedTest
    @ValueSource(ints = {9, 30})
    void aStopJustBeforeTheEndIsFound(int stoodS) {
        Made made = Made.at(10, 400 + stoodS)
                .with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 10 : t < 400 ? running(t) : 12.7);
        boolean[] on = of(made);
        assertThat(on[390]).isTrue();
        assertThat(on[400 + stoodS - 2]).isFalse();
    }
}
