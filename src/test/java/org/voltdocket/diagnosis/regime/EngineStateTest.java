package org.voltdocket.diagnosis.regime;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.signal.Grid;

/** A drive made by hand: rest for a minute, one start, the engine runs, and is switched off. */
class EngineStateTest {

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
        List<EngineStart> starts = EngineStartDetector.in(grid);
        boolean[] running = EngineState.running(grid, starts);
        for (int k = 0; k < running.length; k++) {
            boolean near = Math.abs(k - fromS) <= TOLERANCE_S || Math.abs(k - toS) <= TOLERANCE_S;
            if (!near) {
                assertThat(running[k]).as("second %s", k).isEqualTo(k > fromS && k < toS);
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

    @Test
    void aStopInTrafficIsSeenInTheVoltage() {
        Made made = Made.at(10, END_S).with(Channel.MEASURED_V, t -> {
            boolean stopped = t >= 400 && t < 430;
            boolean restart = t >= 430 && t < 430.8;
            return restart ? 10.4 : stopped ? 12.3 : volts(t);
        });
        boolean[] running = EngineState.running(made.grid(), EngineStartDetector.in(made.grid()));
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
        boolean[] running = EngineState.running(made.grid(), EngineStartDetector.in(made.grid()));
        for (int k = 0; k < 1800; k++) {
            boolean border = Math.abs(k - 60) < 5 || Math.abs(k - 700) < 20 || Math.abs(k - 1200) < 5;
            assertThat(border || running[k] == (k > 60 && k < 700 || k > 1200))
                    .as("second %s", k)
                    .isTrue();
        }
    }

    @Test
    void aRecordingAtRestHasNoRunningEngineAndOneAtChargingVoltageHasItThroughout() {
        Grid rest = Made.at(1, 600).with(Channel.MEASURED_V, t -> 12.5).grid();
        assertThat(EngineState.running(rest, List.of())).containsOnly(false);
        Grid charging = Made.at(1, 600).with(Channel.MEASURED_V, t -> 14.1).grid();
        assertThat(EngineState.running(charging, List.of())).containsOnly(true);
    }

    private double rough(double t) {
        return rough[(int) Math.round(t * 10)];
    }

    private static void says(Made made, double[] on, double[] off) {
        boolean[] running = EngineState.running(made.grid(), EngineStartDetector.in(made.grid()));
        for (double second : on) {
            assertThat(running[(int) second]).as("runs at %s", second).isTrue();
        }
        for (double second : off) {
            assertThat(running[(int) second]).as("stands at %s", second).isFalse();
        }
    }

    /** Plugged in while the engine ran: it stops at 300 s and is started at 600 s, and surface charge sinks between. */
    @Test
    void anEngineThatRanBeforeTheRecordingBeganIsSeenToStop() {
        Made made = Made.at(10, 900).with(Channel.MEASURED_V, t -> {
            double sinking = 12.75 + 0.3 * Math.exp(-(t - 300) / 20);
            boolean parked = t >= 300 && t < 600;
            return t >= 600 && t < 601 ? 10 : parked ? sinking : 14.2 + rough(t);
        });
        says(made, new double[] {5, 150, 290, 610, 850}, new double[] {310, 450, 595});
    }

    /** A source that never charges leaves no step when it stops; only calm, and a battery that recovers, tell it. */
    @Test
    void withADeadSourceCalmTellsThatTheEngineStopped() {
        Made made = Made.at(10, 1000)
                .with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 10 : t < 800 ? 12.1 + rough(t) : 12.3);
        says(made, new double[] {70, 400, 780}, new double[] {10, 55, 830, 990});
    }

    @Test
    void anEngineThatIsNotStoppedRunsToTheEnd() {
        Made made = Made.at(10, 600).with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 10 : 14.2 + rough(t));
        says(made, new double[] {70, 300, 560, 599}, new double[] {10, 55});
        Made shortly = Made.at(10, 90).with(Channel.MEASURED_V, t -> t < 60 ? 12.5 : t < 61 ? 10 : 14.2 + rough(t));
        says(shortly, new double[] {65, 80, 89}, new double[] {10, 55});
    }

    /** Loads make the voltage of a weak source fall and rise again: it is no stop, for a parked battery only sinks. */
    @Test
    void aLoadThatComesAndGoesIsNoStop() {
        Made made = Made.at(10, 1000).with(Channel.MEASURED_V, t -> {
            double load = t >= 400 && t < 460 || t >= 700 && t < 730 ? 0.9 : 0;
            return t < 60 ? 12.5 : t < 61 ? 10 : 14.0 - load + rough(t);
        });
        says(made, new double[] {390, 430, 500, 715, 950}, new double[] {10, 55});
    }

    /** Nobody drives with the engine off: what the road speed says comes before how the voltage looks. */
    @Test
    void aCarThatDrivesHasItsEngineRunning() {
        Made made = Made.at(10, 600)
                .with(Channel.MEASURED_V, t -> 12.4)
                .with(Channel.SPEED, 10, t -> t >= 100 && t < 500 ? 50 : 0);
        says(made, new double[] {110, 300, 490}, new double[] {});
        boolean[] without = EngineState.running(
                Made.at(10, 600).with(Channel.MEASURED_V, t -> 12.4).grid(), List.of());
        assertThat(without).containsOnly(false);
    }

    /** An engine speed told from the beginning settles it; one told for a twentieth of the time does not. */
    @Test
    void theEngineSpeedDecidesWhereItIsToldOftenEnough() {
        Made told = Made.at(10, 600)
                .with(Channel.MEASURED_V, t -> 12.4)
                .with(Channel.ENGINE_RPM, 10, t -> t < 20 ? Double.NaN : t < 300 ? 401 : 400);
        says(told, new double[] {0, 10, 100, 295}, new double[] {302, 500});
        Made seldom = Made.at(10, 600)
                .with(Channel.MEASURED_V, t -> 12.4)
                .with(Channel.ENGINE_RPM, 10, t -> t < 20 ? 900 : Double.NaN);
        says(seldom, new double[] {}, new double[] {5, 15, 500});
    }

    /** Rows ten seconds apart in steps of 0.1 V: what follows the engine is told by the fall to rest and the current. */
    @Test
    void slowCoarseRowsTellWhenTheEngineStops() {
        Made made = Made.at(0.1, 4000)
                .with(Channel.MEASURED_V, t -> t < 600 ? 12.4 : t < 2000 ? 14.2 : 12.7)
                .with(Channel.MEASURED_A, t -> t < 600 ? 0 : t < 2000 ? 5 : -0.1);
        boolean[] running = EngineState.running(made.grid(), EngineStartDetector.in(made.grid()));
        assertThat(running[300]).isFalse();
        assertThat(running[1300]).isTrue();
        assertThat(running[1900]).isTrue();
        assertThat(running[2100]).isFalse();
        assertThat(running[3500]).isFalse();
    }

    /** The source stops during the drive, and only the driver's mark tells when the engine does. */
    @Test
    void theEngineRunsUntilTheMarkThatItWasStopped() {
        Recording plain = Made.at(1, 2000)
                .with(Channel.MEASURED_V, t -> t < 100 ? 12.3 : t < 101 ? 10 : t < 800 ? 14.2 : t < 1500 ? 12.1 : 12.3)
                .recording();
        Recording marked = new Recording(
                plain.kind(),
                null,
                plain.timeS(),
                java.util.Map.of(Channel.MEASURED_V, plain.channel(Channel.MEASURED_V)),
                List.of(new Recording.Mark(100, "engine started"), new Recording.Mark(1500, "engine off")));
        Grid grid = Grid.of(marked, 1);
        boolean[] running = EngineState.running(grid, EngineStartDetector.in(grid));
        assertThat(running[700]).isTrue();
        assertThat(running[1300]).isTrue();
        assertThat(running[1600]).isFalse();
    }
}
