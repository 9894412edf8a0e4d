package org.voltdocket.diagnosis.regime;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
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

    private static boolean[] of(Made made, int method) {
        return of(made.grid(), method);
    }

    private static boolean[] of(Grid grid, int method) {
        return Engine.running(grid, Starts.in(grid), method);
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
    @CsvSource({"1, 12", "1, 40", "1, 150", "2, 12", "2, 40", "2, 150"})
    void aStopIsTheStepDownOfTheSource(int method, int stoodS) {
        stopsAt400(of(restarted(stoodS, t -> 12.3), method), stoodS, 2);
    }

    /** Surface charge sinks from near the charging voltage: the step is small, and what follows only sinks. */
    @ParameterizedTest
    @CsvSource({"1, 40", "1, 300", "2, 40", "2, 300"})
    void aStopIsSeenAboveSurfaceCharge(int method, int stoodS) {
        stopsAt400(of(restarted(stoodS, t -> 12.8 + 0.5 * Math.exp(-t / 30)), method), stoodS, 6);
    }

    /** Switched off for good: the rest of the recording stands, from two seconds about the step on. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void theLastStopIsTheStepDownToo(int method) {
        Made made = Made.at(10, 600)
                .with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 10 : t < 400 ? running(t) : 12.7);
        boolean[] on = of(made, method);
        for (int k = 62; k < on.length; k++) {
            if (Math.abs(k - 400) > 2) {
                assertThat(on[k]).as("second %s", k).isEqualTo(k < 400);
            }
        }
    }

    /** No resting battery keeps more than 13.25 V, and no engine needs to run for less. */
    @ParameterizedTest
    @CsvSource({"13.2, false", "13.3, true"})
    void withoutAStartTheVoltageAloneTellsIt(double volts, boolean runs) {
        Grid grid = Made.at(1, 600).with(Channel.MEASURED_V, t -> volts).grid();
        assertThat(Engine.running(grid, List.of(), 1)).containsOnly(runs);
    }

    /** Before the first start no engine ran that nobody saw, though its speed is told only later. */
    @Test
    void beforeTheFirstStartTheEngineStands() {
        Made started = Made.at(10, 300)
                .with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 10 : 14.2)
                .with(Channel.ENGINE_RPM, 10, t -> t < 90 ? Double.NaN : 900);
        assertThat(of(started, 1)[30]).isFalse();
        assertThat(of(started, 1)[200]).isTrue();
        Made met = Made.at(10, 300)
                .with(Channel.MEASURED_V, t -> 14.2)
                .with(Channel.ENGINE_RPM, 10, t -> t < 90 ? Double.NaN : 900);
        assertThat(of(met, 1)[30]).as("it ran when it was plugged in").isTrue();
    }

    /** An engine runs above 400 1/min: no starter turns one as fast. */
    @Test
    void aStarterTurnsSlowerThanAnEngineRuns() {
        Made made = Made.at(10, 300)
                .with(Channel.MEASURED_V, t -> 12.4)
                .with(Channel.ENGINE_RPM, 10, t -> t < 100 ? 390 : t < 200 ? 410 : 390);
        boolean[] on = of(made, 1);
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
        assertThat(of(made, 2)[300]).isEqualTo(runs);
    }

    /** Plugged in at a voltage that no resting battery has, it ran; at one that a charged battery has, it stood. */
    @ParameterizedTest
    @CsvSource({"1, 14.0, true", "1, 13.0, false", "2, 14.0, true", "2, 13.0, false"})
    void whatWasBeforeTheFirstStart(int method, double before, boolean ran) {
        Made made = Made.at(10, 900)
                .with(
                        Channel.MEASURED_V,
                        t -> t < 200
                                ? before + (ran ? running(t) - 14.2 : 0)
                                : t < 300 ? 12.5 : t < 301 ? 10 : running(t));
        boolean[] on = of(made, method);
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
        boolean[] on = of(made, 1);
        for (int k = 0; k < on.length; k++) {
            if (Math.abs(k - 61) > 1 && Math.abs(k - 400) > 1) {
                assertThat(on[k]).as("second %s", k).isEqualTo(k > 61 && k < 400);
            }
        }
    }

    /** Without a step only the calm of a minute or more tells that the car was parked; a shorter one may be a smooth road. */
    @ParameterizedTest
    @CsvSource({"500, true", "40, false"})
    void aCarParkedWithADeadSourceIsToldByAMinuteOfCalm(int stoodS, boolean told) {
        Made made = Made.at(10, 900 + stoodS).with(Channel.MEASURED_V, t -> {
            boolean crank = t >= 60 && t < 61 || t >= 600 + stoodS && t < 601 + stoodS;
            boolean calm = t < 60 || t >= 600 && t < 600 + stoodS;
            return crank ? 10 : calm ? 12.5 : 12.5 + rough[(int) Math.round(t * 10)];
        });
        boolean[] on = of(made, 1);
        assertThat(on[570]).isTrue();
        assertThat(on[600 + stoodS / 2]).isEqualTo(!told);
        assertThat(on[600 + stoodS - 3]).isFalse();
        assertThat(on[610 + stoodS]).isTrue();
    }

    /** An engine that is started again stood before, if nothing shows since when: ten seconds. */
    @Test
    void aRestartThatNothingAnnouncesCountsTenSeconds() {
        Made made = Made.at(10, 900)
                .with(
                        Channel.MEASURED_V,
                        t -> t < 60
                                ? 12.5
                                : t < 61 || t >= 600 && t < 601 ? 10 : 12.5 + rough[(int) Math.round(t * 10)]);
        boolean[] on = of(made, 1);
        assertThat(on[586]).isTrue();
        assertThat(on[592]).isFalse();
        assertThat(on[598]).isFalse();
        assertThat(on[605]).isTrue();
    }

    /** Less than twelve seconds at the end are too short to tell a stop; half a minute is not. */
    @ParameterizedTest
    @CsvSource({"9, true", "30, false"})
    void aStopJustBeforeTheEndIsNotTold(int stoodS, boolean runs) {
        Made made = Made.at(10, 400 + stoodS)
                .with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 10 : t < 400 ? running(t) : 12.7);
        boolean[] on = of(made, 1);
        assertThat(on[390]).isTrue();
        assertThat(on[400 + stoodS - 2]).isEqualTo(runs);
    }
}
