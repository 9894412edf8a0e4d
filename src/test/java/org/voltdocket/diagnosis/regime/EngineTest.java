package org.voltdocket.diagnosis.regime;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.signal.Grid;

/** A drive made by hand: rest for a minute, one start, the engine runs, and is switched off. */
class EngineTest {

    private static final double START_S = 60;
    private static final double OFF_S = 900;
    private static final double END_S = 1000;
    private static final int TOLERANCE_S = 4;

    private final double[] rough = Made.noise(new Random(4), 20_000, 0.05, 0.3);

    private double volts(double t) {
        if (t < START_S) {
            return 12.5;
        }
        if (t < START_S + 1) {
            return 10;
        }
        double sinking = 12.75 + 0.3 * Math.exp(-(t - OFF_S) / 20);
        return t < OFF_S ? 14.2 + rough[(int) Math.round(t * 10)] : sinking;
    }

    private static void runs(Grid grid, double fromS, double toS) {
        runs(grid, fromS, toS, 1);
        runs(grid, fromS, toS, 2);
    }

    private static void runs(Grid grid, double fromS, double toS, int method) {
        List<Start> starts = Starts.in(grid);
        boolean[] running = Engine.running(grid, starts, method);
        for (int k = 0; k < running.length; k++) {
            boolean near = Math.abs(k - fromS) <= TOLERANCE_S || Math.abs(k - toS) <= TOLERANCE_S;
            if (!near) {
                assertThat(running[k]).as("method %s, second %s", method, k).isEqualTo(k > fromS && k < toS);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1.5, 3})
    void fromTheEngineSpeedHoweverLateItIsTold(double late) {
        Made made = Made.at(10, END_S)
                .with(Channel.MEASURED_V, this::volts)
                .with(Channel.ENGINE_RPM, 10, t -> t - late > START_S + 1 && t - late < OFF_S ? 1200 : 0);
        runs(made.grid(), START_S + 1, OFF_S);
    }

    @Test
    void fromTheVoltageAlone() {
        runs(Made.at(10, END_S).with(Channel.MEASURED_V, this::volts).grid(), START_S + 1, OFF_S);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void aStopInTrafficIsSeenInTheVoltage(int method) {
        Made made = Made.at(10, END_S).with(Channel.MEASURED_V, t -> {
            boolean stopped = t >= 400 && t < 430;
            boolean restart = t >= 430 && t < 430.8;
            return restart ? 10.4 : stopped ? 12.3 : volts(t);
        });
        boolean[] running = Engine.running(made.grid(), Starts.in(made.grid()), method);
        assertThat(running[390]).isTrue();
        assertThat(running[415]).isFalse();
        assertThat(running[440]).isTrue();
    }

    /** A car parked between two trips: the first stop has no step, only the roughness of the running engine ends. */
    @Test
    void aParkedCarBetweenTwoTripsIsToldByItsCalm() {
        Made made = Made.at(10, 1800).with(Channel.MEASURED_V, t -> {
            boolean crank = t >= 60 && t < 61 || t >= 1200 && t < 1201;
            boolean on = t >= 61 && t < 700 || t >= 1201;
            return crank ? 10 : 12.5 + (on ? rough[(int) Math.round(t * 10)] : 0);
        });
        boolean[] running = Engine.running(made.grid(), Starts.in(made.grid()), 2);
        for (int k = 0; k < 1800; k++) {
            boolean border = Math.abs(k - 60) < 5 || Math.abs(k - 700) < 20 || Math.abs(k - 1200) < 5;
            assertThat(border || running[k] == (k > 60 && k < 700 || k > 1200))
                    .as("second %s", k)
                    .isTrue();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void aRecordingAtRestHasNoRunningEngineAndOneAtChargingVoltageHasItThroughout(int method) {
        Grid rest = Made.at(1, 600).with(Channel.MEASURED_V, t -> 12.5).grid();
        assertThat(Engine.running(rest, List.of(), method)).containsOnly(false);
        Grid charging = Made.at(1, 600).with(Channel.MEASURED_V, t -> 14.1).grid();
        assertThat(Engine.running(charging, List.of(), method)).containsOnly(true);
    }

    private double rough(double t) {
        return rough[(int) Math.round(t * 10)];
    }

    private static void says(Made made, int method, double[] on, double[] off) {
        boolean[] running = Engine.running(made.grid(), Starts.in(made.grid()), method);
        for (double second : on) {
            assertThat(running[(int) second])
                    .as("method %s, runs at %s", method, second)
                    .isTrue();
        }
        for (double second : off) {
            assertThat(running[(int) second])
                    .as("method %s, stands at %s", method, second)
                    .isFalse();
        }
    }

    /** Plugged in while the engine ran: it stops at 300 s and is started at 600 s, and surface charge sinks between. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void anEngineThatRanBeforeTheRecordingBeganIsSeenToStop(int method) {
        Made made = Made.at(10, 900).with(Channel.MEASURED_V, t -> {
            double sinking = 12.75 + 0.3 * Math.exp(-(t - 300) / 20);
            boolean parked = t >= 300 && t < 600;
            return t >= 600 && t < 601 ? 10 : parked ? sinking : 14.2 + rough(t);
        });
        says(made, method, new double[] {5, 150, 290, 610, 850}, new double[] {310, 450, 595});
    }

    /** A source that never charges leaves no step when it stops; only calm, and a battery that recovers, tell it. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void withADeadSourceCalmTellsThatTheEngineStopped(int method) {
        Made made = Made.at(10, 1000)
                .with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 10 : t < 800 ? 12.1 + rough(t) : 12.3);
        says(made, method, new double[] {70, 400, 780}, new double[] {10, 55, 830, 990});
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void anEngineThatIsNotStoppedRunsToTheEnd(int method) {
        Made made = Made.at(10, 600).with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 10 : 14.2 + rough(t));
        says(made, method, new double[] {70, 300, 560, 599}, new double[] {10, 55});
        Made shortly = Made.at(10, 90).with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 10 : 14.2 + rough(t));
        says(shortly, method, new double[] {65, 80, 89}, new double[] {10, 55});
    }

    /** Loads make the voltage of a weak source fall and rise again: it is no stop, for a parked battery only sinks. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void aLoadThatComesAndGoesIsNoStop(int method) {
        Made made = Made.at(10, 1000).with(Channel.MEASURED_V, t -> {
            double load = t >= 400 && t < 460 || t >= 700 && t < 730 ? 0.9 : 0;
            return t < 60 ? 12.5 : t < 61 ? 10 : 14.0 - load + rough(t);
        });
        says(made, method, new double[] {390, 430, 500, 715, 950}, new double[] {10, 55});
    }

    /** Nobody drives with the engine off: what the road speed says comes before how the voltage looks. */
    @Test
    void aCarThatDrivesHasItsEngineRunning() {
        Made made = Made.at(10, 600)
                .with(Channel.MEASURED_V, t -> 12.4)
                .with(Channel.SPEED, 10, t -> t >= 100 && t < 500 ? 50 : 0);
        says(made, 2, new double[] {110, 300, 490}, new double[] {});
        boolean[] without = Engine.running(
                Made.at(10, 600).with(Channel.MEASURED_V, t -> 12.4).grid(), List.of(), 2);
        assertThat(without).containsOnly(false);
    }

    /** A stop in traffic begins after the car stood still, not at an earlier step of the voltage. */
    @Test
    void aStopIsLookedForAfterTheCarStoodStill() {
        Made made = Made.at(10, 900)
                .with(Channel.MEASURED_V, t -> {
                    boolean crank = t >= 60 && t < 61 || t >= 640 && t < 641;
                    double level = t < 500 ? 14.4 : t < 620 ? 13.5 : t < 640 ? 13.3 : 14.2;
                    return t < 60 ? 12.5 : crank ? 10 : level + rough(t);
                })
                .with(Channel.SPEED, 10, t -> t > 70 && t < 618 ? 40 : 0);
        says(made, 1, new double[] {450, 510, 600, 615, 650}, new double[] {10, 630});
    }

    /** An engine speed told from the beginning settles it; one told for a twentieth of the time does not. */
    @Test
    void theEngineSpeedDecidesWhereItIsToldOftenEnough() {
        Made told = Made.at(10, 600)
                .with(Channel.MEASURED_V, t -> 12.4)
                .with(Channel.ENGINE_RPM, 10, t -> t < 20 ? Double.NaN : t < 300 ? 401 : 400);
        says(told, 1, new double[] {0, 10, 100, 295}, new double[] {302, 500});
        Made seldom = Made.at(10, 600)
                .with(Channel.MEASURED_V, t -> 12.4)
                .with(Channel.ENGINE_RPM, 10, t -> t < 20 ? 900 : Double.NaN);
        says(seldom, 1, new double[] {}, new double[] {5, 15, 500});
    }
}
