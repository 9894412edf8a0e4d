package org.voltdocket.diagnosis.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.voltdocket.diagnosis.Channel.COOLANT;
import static org.voltdocket.diagnosis.Channel.MEASURED_A;
import static org.voltdocket.diagnosis.Channel.MEASURED_V;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;

/** Small recordings whose grid is worked out by hand. */
class GridTest {

    private static final float NONE = Float.NaN;

    private final Map<Channel, float[]> channels = new EnumMap<>(Channel.class);

    private GridTest with(Channel channel, double... values) {
        float[] narrow = new float[values.length];
        for (int i = 0; i < narrow.length; i++) {
            narrow[i] = (float) values[i];
        }
        channels.put(channel, narrow);
        return this;
    }

    private Grid grid(double stepS, double... timeS) {
        channels.computeIfAbsent(MEASURED_V, c -> new float[timeS.length]);
        return Grid.of(new Recording(EvidenceKind.DRIVE_RECORDING, null, timeS, channels, List.of()), stepS);
    }

    /** One wild sample among three or more does not show; of two, and of four, the middle ones count by half. */
    @Test
    void aStepIsTheMedianOfItsSamplesSoASpikeDoesNotShow() {
        Grid grid = with(MEASURED_V, 12.25, 12.5, 40, 12, 13, 12.75, 12.75, 12, 40)
                .grid(1, 0, 0.3, 0.6, 1, 1.5, 2, 2.1, 2.2, 2.3);
        assertThat(grid.voltage()).containsExactly(12.5, 12.5, 12.75);
    }

    /** Five samples in no order, then four whose middle ones are 12.25 and 12.5; twenty more than the first room holds. */
    @Test
    void anyNumberOfSamplesMakesAStep() {
        Grid grid = with(MEASURED_V, 12.5, 40, 12, 12.25, 13, 12.5, 0, 12.25, 40)
                .grid(1, 0, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4, 1.6);
        assertThat(grid.voltage()).containsExactly(12.5, 12.375);
        double[] timeS = new double[21];
        double[] volts = new double[21];
        for (int i = 0; i < 21; i++) {
            timeS[i] = i / 21.0;
            volts[i] = i * 8 % 21;
        }
        assertThat(new GridTest().with(MEASURED_V, volts).grid(1, timeS).voltage())
                .as("0 to 20, each once")
                .containsExactly(10);
    }

    /** Steps of irregular rows: [10, 12) has the rows at 10 and 11.9, [12, 14) that at 12, [14, 16) the rest. */
    @Test
    void irregularRowsFallIntoTheStepTheyBelongTo() {
        Grid grid = with(MEASURED_V, 12, 13, 14, 15, 16).grid(2, 10, 11.9, 12, 15.99, 15.999);
        assertThat(grid.steps()).isEqualTo(3);
        assertThat(grid.voltage()).containsExactly(12.5, 14, 15.5);
        assertThat(grid.timeOf(1)).isEqualTo(12);
        assertThat(grid.ends()).containsExactly(2, 3, 5);
        assertThat(grid.stepOf(13.9)).isEqualTo(1);
        assertThat(grid.stepOf(3)).isZero();
        assertThat(grid.stepOf(99)).isEqualTo(2);
    }

    /** From 12 V at step 0 to 14 V at step 4 a straight line; 6 s are not bridged. */
    @Test
    void aGapOfFiveSecondsIsBridgedAndALongerOneIsNot() {
        double[] bridged = with(MEASURED_V, 12, 14).grid(1, 0, 4.2).voltage();
        assertThat(bridged).containsExactly(new double[] {12, 12.5, 13, 13.5, 14}, within(1e-12));
        double[] fiveSteps = with(MEASURED_V, 12, 14.5).grid(1, 0, 5).voltage();
        assertThat(fiveSteps[1]).isCloseTo(12.5, within(1e-12));
        double[] open = with(MEASURED_V, 12, 14).grid(1, 0, 6).voltage();
        assertThat(open).containsExactly(12, NONE, NONE, NONE, NONE, NONE, 14);
    }

    /** Of steps of 2 s three are bridged, though they take 6 s, and four are not. */
    @Test
    void wideStepsBridgeThreeOfThemselves() {
        double[] bridged = with(MEASURED_V, 12, 15).grid(2, 0, 6).voltage();
        assertThat(bridged).containsExactly(new double[] {12, 13, 14, 15}, within(1e-12));
        double[] open = with(MEASURED_V, 12, 15).grid(2, 0, 8).voltage();
        assertThat(open).containsExactly(12, NONE, NONE, NONE, 15);
    }

    /** Each gap is bridged from its own ends: 12 to 13 over two steps, then 13 to 10 over three. */
    @Test
    void gapsAfterEachOtherAreBridgedApart() {
        double[] bridged = with(MEASURED_V, 12, 13, 10).grid(1, 100, 102, 105).voltage();
        assertThat(bridged).containsExactly(new double[] {12, 12.5, 13, 12, 11, 10}, within(1e-12));
    }

    /** Centres at 0.5, 1.5, 2.5 and 3.5 s: a sample holds until the next one that is not later than the centre. */
    @Test
    void aSlowChannelIsHeldUntilItsNextSample() {
        Grid grid = with(COOLANT, NONE, 20, NONE, 30, NONE, 40, NONE).grid(1, 0, 0.6, 1, 1.5, 2, 2.6, 3.2);
        assertThat(grid.held(COOLANT, 0)).containsExactly(NONE, 30, 30, 40);
        assertThat(grid.held(MEASURED_A, 0)).isNull();
    }

    /** Told 1.25 s late: at the centre 0.5 s holds what was said at 1.75 s or before, and so on. */
    @Test
    void aDelayIsTakenOff() {
        Grid grid = with(COOLANT, 10, 20, 30, 40, 50).grid(1, 0, 1, 2, 3, 4);
        assertThat(grid.held(COOLANT, 0)).containsExactly(10, 20, 30, 40, 50);
        assertThat(grid.held(COOLANT, 1.25)).containsExactly(20, 30, 40, 50, 50);
        assertThat(grid.held(COOLANT, 1.5))
                .as("as late as the centre is not later")
                .containsExactly(30, 40, 50, 50, 50);
        assertThat(grid.held(COOLANT, 0)).as("asked again").containsExactly(10, 20, 30, 40, 50);
    }

    /** Sampled each second it keeps for 5 s: the sample of 2 s until the centre 6.5 s, no longer at 7.5 s; 83 by 8.5 s. */
    @Test
    void aSampleIsHeldForFiveSecondsOnly() {
        Grid grid = with(COOLANT, 80, 81, 82, NONE, 83).grid(1, 0, 1, 2, 5, 8.2);
        assertThat(grid.held(COOLANT, 0)).containsExactly(80, 81, 82, 82, 82, 82, 82, NONE, 83);
    }

    /** To the limit: said at 0.5 s, it still holds at the centre 5.5 s and no longer at 6.5 s. */
    @Test
    void atExactlyFiveSecondsASampleStillHolds() {
        double[] held =
                with(COOLANT, NONE, 80, 81, NONE).grid(1, 0, 0.25, 0.5, 9).held(COOLANT, 0);
        assertThat(held[5]).isEqualTo(81);
        assertThat(held[6]).isNaN();
    }

    /** Polled every 4 s it keeps for three times that: the sample of 8 s until 20 s. */
    @Test
    void aChannelPolledSlowlyIsHeldForThreeOfItsIntervals() {
        Grid grid = with(COOLANT, 80, 81, 82, NONE).grid(1, 0, 4, 8, 24);
        double[] held = grid.held(COOLANT, 0);
        assertThat(held[19]).as("centre at 19.5 s").isEqualTo(82);
        assertThat(held[20]).as("centre at 20.5 s").isNaN();
    }

    /** Means of 1 and 2, of 6 alone, and the line between across the step that has nothing. */
    @Test
    void aFastChannelIsAveraged() {
        Grid grid = with(MEASURED_A, 1, 2, NONE, NONE, 6).grid(1, 0, 0.5, 0.9, 1.2, 2.5);
        assertThat(grid.mean(MEASURED_A)).containsExactly(1.5, 3.75, 6);
        assertThat(grid.mean(COOLANT)).isNull();
    }

    /** A week at 1 s would be 604 800 steps; the step is widened to a 40 000th, 15.12 s. */
    @Test
    void aVeryLongRecordingGetsWiderSteps() {
        Grid grid = grid(1, 0, 604_800);
        assertThat(grid.stepS()).isCloseTo(15.12, within(1e-9));
        assertThat(grid.steps()).isEqualTo(40_001);
    }
}
