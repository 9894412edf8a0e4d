package org.voltdocket.diagnosis.regime;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.signal.Grid;

class RegimesTest {

    private static final Regime[] FLOW = {Regime.CHARGING, Regime.HOLDING, Regime.DISCHARGING, Regime.UNKNOWN};

    private static boolean[] runs(Random chance, int n) {
        boolean[] out = new boolean[n];
        for (int k = 0; k < n; ) {
            int end = Math.min(n, k + 1 + chance.nextInt(200));
            Arrays.fill(out, k, end, chance.nextBoolean());
            k = end;
        }
        return out;
    }

    /** Whatever goes in, the spans cover the recording without gap, in order, and neighbours differ. */
    @RepeatedTest(100)
    void spansCoverWithoutGap(RepetitionInfo which) {
        Random chance = new Random(which.getCurrentRepetition());
        double hertz = new double[] {0.5, 1, 2.5, 10}[chance.nextInt(4)];
        double blank = 0.4 * chance.nextDouble();
        Grid grid = Made.at(hertz, 20 + chance.nextInt(900))
                .with(Channel.MEASURED_V, t -> chance.nextDouble() < blank ? Double.NaN : 11 + 4 * chance.nextDouble())
                .grid();
        Regime[] flow = new Regime[grid.steps()];
        Arrays.setAll(flow, k -> FLOW[chance.nextInt(FLOW.length)]);
        double end = grid.recording().durationS();
        List<EngineStart> starts = new ArrayList<>();
        for (double at = end * chance.nextDouble() / 4; at < end; at += 1 + end * chance.nextDouble() / 3) {
            starts.add(new EngineStart(at, Math.min(end, at + 2 * chance.nextDouble()), 12.5, 9.5, 14));
        }
        List<RegimeSpan> spans = Regimes.cut(grid, starts, runs(chance, grid.steps()), flow);
        assertThat(spans.get(0).from()).isZero();
        assertThat(spans.get(spans.size() - 1).to()).isEqualTo(end);
        for (int i = 0; i < spans.size(); i++) {
            assertThat(spans.get(i).to()).isGreaterThan(spans.get(i).from());
            if (i > 0) {
                assertThat(spans.get(i).from()).isEqualTo(spans.get(i - 1).to());
                assertThat(spans.get(i).regime()).isNotEqualTo(spans.get(i - 1).regime());
            }
        }
        starts.forEach(s -> assertThat(spans)
                .anyMatch(one -> one.regime() == Regime.CRANKING
                        && one.from() <= s.fromS()
                        && one.to() >= Math.min(end, s.toS())));
    }

    @Test
    void aShortStopBetweenTwoRunsIsTrafficAndALongOneIsRest() {
        Grid grid = Made.at(1, 1000).with(Channel.MEASURED_V, t -> 12.5).grid();
        boolean[] running = new boolean[grid.steps()];
        Arrays.fill(running, 50, 300, true);
        Arrays.fill(running, 340, 600, true);
        Arrays.fill(running, 900, 1001, true);
        Regime[] flow = new Regime[grid.steps()];
        Arrays.fill(flow, Regime.CHARGING);
        assertThat(Regimes.cut(grid, List.of(new EngineStart(48, 49.5, 12.5, 9.9, 14)), running, flow))
                .extracting(RegimeSpan::regime)
                .containsExactly(
                        Regime.REST,
                        Regime.CRANKING,
                        Regime.REST,
                        Regime.CHARGING,
                        Regime.STOPPED,
                        Regime.CHARGING,
                        Regime.REST,
                        Regime.CHARGING);
    }

    private static List<RegimeSpan> driven(Regime... flow) {
        Grid grid =
                Made.at(1, flow.length - 1).with(Channel.MEASURED_V, t -> 14).grid();
        boolean[] running = new boolean[flow.length];
        Arrays.fill(running, true);
        return Regimes.cut(grid, List.of(), running, flow);
    }

    private static Regime[] flow(Regime around, Regime within, int seconds) {
        Regime[] flow = new Regime[61];
        Arrays.fill(flow, around);
        Arrays.fill(flow, 20, 20 + seconds, within);
        return flow;
    }

    /** Under four seconds a way of flowing belongs to the one before; four are its own, and a gap is never filled. */
    @Test
    void aWayOfFlowingLastsFourSeconds() {
        assertThat(driven(flow(Regime.CHARGING, Regime.HOLDING, 3)))
                .containsExactly(new RegimeSpan(0, 60, Regime.CHARGING));
        assertThat(driven(flow(Regime.HOLDING, Regime.DISCHARGING, 3)))
                .containsExactly(new RegimeSpan(0, 60, Regime.HOLDING));
        assertThat(driven(flow(Regime.DISCHARGING, Regime.CHARGING, 4)))
                .containsExactly(
                        new RegimeSpan(0, 20, Regime.DISCHARGING),
                        new RegimeSpan(20, 24, Regime.CHARGING),
                        new RegimeSpan(24, 60, Regime.DISCHARGING));
        assertThat(driven(flow(Regime.CHARGING, Regime.UNKNOWN, 3)))
                .extracting(RegimeSpan::regime)
                .containsExactly(Regime.CHARGING, Regime.UNKNOWN, Regime.CHARGING);
        Regime[] first = flow(Regime.CHARGING, Regime.CHARGING, 1);
        Arrays.fill(first, 0, 2, Regime.HOLDING);
        assertThat(driven(first))
                .as("nothing before it")
                .extracting(RegimeSpan::to)
                .containsExactly(2.0, 60.0);
    }

    /** Three minutes are a stop in traffic, a second more is rest. */
    @Test
    void aStopInTrafficLastsThreeMinutes() {
        assertThat(stopped(180)).containsExactly(Regime.CHARGING, Regime.STOPPED, Regime.CHARGING);
        assertThat(stopped(181)).containsExactly(Regime.CHARGING, Regime.REST, Regime.CHARGING);
    }

    private static List<Regime> stopped(int seconds) {
        Grid grid = Made.at(1, 400).with(Channel.MEASURED_V, t -> 13).grid();
        boolean[] running = new boolean[grid.steps()];
        Arrays.fill(running, true);
        Arrays.fill(running, 100, 100 + seconds, false);
        Regime[] flow = new Regime[grid.steps()];
        Arrays.fill(flow, Regime.CHARGING);
        return Regimes.cut(grid, List.of(), running, flow).stream()
                .map(RegimeSpan::regime)
                .toList();
    }
}
