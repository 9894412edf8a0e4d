package org.voltdocket.diagnosis.regime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.signal.Grid;

/**
 * Cranking curves made by hand: rest, a first plunge, compressions that pull at about 5 Hz around 10 V, then the charging
 * source (form: common practice).
 */
class EngineStartDetectorTest {

    private static double cranking(double t, double fromS, double forS, double after) {
        if (t < fromS) {
            return 12.55;
        }
        if (t < fromS + 0.06) {
            return 8.9;
        }
        return t < fromS + forS ? 10.1 + 0.25 * Math.sin(2 * Math.PI * 5 * (t - fromS)) : after;
    }

    private static List<EngineStart> found(double hertz, double seconds, DoubleUnaryOperator volts) {
        return EngineStartDetector.in(
                Made.at(hertz, seconds).with(Channel.MEASURED_V, volts).grid());
    }

    @ParameterizedTest
    @ValueSource(doubles = {2, 5, 10, 50, 100, 200})
    void oneStartIsFoundAtAnyRateOfSampling(double hertz) {
        List<EngineStart> starts = found(hertz, 60, t -> cranking(t, 20.02, 1.2, 14.2));
        assertThat(starts).hasSize(1);
        EngineStart start = starts.get(0);
        assertThat(start.fromS()).isCloseTo(20.02, within(1 / hertz + 0.001));
        assertThat(start.toS()).isCloseTo(21.22, within(1 / hertz + 0.001));
        assertThat(start.beforeV()).isCloseTo(12.55, within(0.001));
        assertThat(start.afterV()).isCloseTo(14.2, within(0.001));
        assertThat(start.minimumV()).isBetween(8.899, 10.36);
    }

    @ParameterizedTest
    @ValueSource(doubles = {50, 200})
    void fastSamplingSeesTheFirstPlunge(double hertz) {
        assertThat(found(hertz, 30, t -> cranking(t, 10.0, 0.9, 14.2)).get(0).minimumV())
                .isCloseTo(8.9, within(0.001));
    }

    @ParameterizedTest
    @ValueSource(doubles = {5, 10, 50, 200})
    void aSingleSpikeIsNoStart(double hertz) {
        long row = Math.round(hertz * 20);
        assertThat(found(hertz, 60, t -> Math.round(t * hertz) == row ? 7.5 : 12.5))
                .isEmpty();
    }

    @Test
    void loadsAndLongSagsAreNoStarts() {
        assertThat(found(10, 120, t -> t > 30 && t < 33 ? 12.0 : 12.5)).isEmpty();
        assertThat(found(10, 120, t -> t > 30 && t < 60 ? 11.2 : 12.5)).isEmpty();
        assertThat(found(10, 120, t -> t > 30 && t < 33 ? 12.9 : 14.3)).isEmpty();
        assertThat(found(10, 120, t -> 12.6 - 0.02 * t)).isEmpty();
    }

    @Test
    void twoTurnsOfTheStarterAreTwoStartsAndAGapWithinOneIsNone() {
        List<EngineStart> two = found(50, 60, t -> t < 24 ? cranking(t, 20, 1, 12.3) : cranking(t, 28, 1, 14.2));
        assertThat(two).hasSize(2);
        assertThat(two.get(1).fromS()).isCloseTo(28, within(0.03));
        List<EngineStart> one = found(50, 60, t -> t >= 20.5 && t < 20.9 ? 12.2 : cranking(t, 20, 1.6, 14.2));
        assertThat(one).hasSize(1);
        assertThat(one.get(0).toS()).isCloseTo(21.6, within(0.03));
    }

    /** Sampled every two seconds a start is one sample; a source that comes on after it tells it from a bad one. */
    @Test
    void atSlowSamplingTheChangeAfterItTellsALaterStart() {
        List<EngineStart> starts =
                found(0.5, 400, t -> t == 100 || t == 200 || t == 300 ? 10.2 : t < 200 ? 12.5 : 14.2);
        assertThat(starts).extracting(EngineStart::fromS).containsExactly(100.0, 200.0);
    }

    /** Half a pull short of 0.8 V, or not below 11.8 V, or nothing before it to be pulled from. */
    @Test
    void whatIsNotPulledFarEnoughIsNoStart() {
        assertThat(found(50, 60, t -> t >= 20 && t < 21 ? 11.75 : 12.5)).isEmpty();
        assertThat(found(50, 60, t -> t >= 20 && t < 21 ? 11.65 : 12.5)).hasSize(1);
        assertThat(found(50, 60, t -> t >= 20 && t < 21 ? 11.85 : 13.4)).isEmpty();
        assertThat(found(50, 60, t -> t < 0.5 ? 10 : 14.2)).isEmpty();
    }

    /** What comes after must be half a volt above the least, else nothing was let go. */
    @Test
    void aVoltageThatDoesNotComeBackIsNoStart() {
        assertThat(found(50, 60, t -> t < 20 ? 12.5 : t < 21 ? 11.2 : 11.65)).isEmpty();
        assertThat(found(50, 60, t -> t < 20 ? 12.5 : t < 21 ? 11.3 : 11.75)).isEmpty();
        assertThat(found(50, 60, t -> t < 20 ? 12.5 : t < 21 ? 11.2 : 11.75)).hasSize(1);
    }

    @Test
    void aStarterThatNeverLetsGoIsNoStart() {
        assertThat(found(50, 60, t -> cranking(t, 20, 15, 14.2))).isEmpty();
    }

    /** A recording counts its seconds from anywhere: the same curve an hour later has the same starts an hour later. */
    @Test
    void aRecordingThatBeginsAtAnotherSecondHasTheSameStarts() {
        DoubleUnaryOperator volts = t -> t < 24 ? cranking(t, 20, 1, 12.3) : cranking(t, 28, 1, 14.2);
        Recording first = Made.at(50, 60).with(Channel.MEASURED_V, volts).recording();
        double[] later = Arrays.stream(first.timeS()).map(t -> t + 3600).toArray();
        Recording shifted = new Recording(
                first.kind(), null, later, Map.of(Channel.MEASURED_V, first.channel(Channel.MEASURED_V)), List.of());
        List<EngineStart> before = EngineStartDetector.in(Grid.of(first, 1));
        List<EngineStart> after = EngineStartDetector.in(Grid.of(shifted, 1));
        assertThat(after).hasSameSizeAs(before).hasSize(2);
        for (int i = 0; i < 2; i++) {
            assertThat(after.get(i).fromS()).isCloseTo(before.get(i).fromS() + 3600, within(1e-6));
            assertThat(after.get(i).toS()).isCloseTo(before.get(i).toS() + 3600, within(1e-6));
            assertThat(after.get(i).beforeV()).isEqualTo(before.get(i).beforeV());
            assertThat(after.get(i).afterV()).isEqualTo(before.get(i).afterV());
        }
    }

    /** A recording may end with the cranking: what comes after is not known, and the starter pulled all the same. */
    @Test
    void aRecordingThatEndsWhileCrankingHasItsStart() {
        List<EngineStart> starts = found(50, 21, t -> cranking(t, 20, 5, 14.2));
        assertThat(starts).hasSize(1);
        assertThat(starts.get(0).afterV()).isNaN();
        assertThat(starts.get(0).toS()).isCloseTo(21, within(0.03));
    }

    /** One sample alone is a start only where three in a second are the most there are. */
    @Test
    void oneSampleIsAStartOnlyWhereSamplesAreRare() {
        assertThat(found(4, 60, t -> t == 20 ? 10 : t < 20 ? 12.5 : 14.2)).isEmpty();
        assertThat(found(2, 60, t -> t == 20 ? 10 : t < 20 ? 12.5 : 14.2)).hasSize(1);
    }

    /** At rare samples a later pull counts where the level has changed by more than 0.15 V after it. */
    @Test
    void aLaterPullAtRareSamplesNeedsAChangeOfTheLevel() {
        assertThat(found(0.5, 400, t -> t == 100 || t == 200 ? 10.2 : t < 200 ? 12.5 : 12.4))
                .hasSize(1);
        assertThat(found(0.5, 400, t -> t == 100 || t == 200 ? 10.2 : t < 200 ? 12.5 : 12.3))
                .hasSize(2);
        assertThat(found(0.5, 400, t -> t == 100 || t == 200 ? 10.2 : t < 200 ? 12.5 : 12.7))
                .hasSize(2);
    }

    /** A starter is let go within twelve seconds, and turned again a second later it is another start. */
    @Test
    void howLongAStartLastsAndWhatParts() {
        assertThat(found(50, 60, t -> cranking(t, 20, 11.8, 14.2))).hasSize(1);
        assertThat(found(50, 60, t -> cranking(t, 20, 12.2, 14.2))).isEmpty();
        assertThat(found(50, 60, t -> t >= 21 && t < 21.9 ? 12.3 : cranking(t, 20, 3, 14.2)))
                .hasSize(1);
        assertThat(found(50, 60, t -> t >= 21 && t < 22.2 ? 12.3 : cranking(t, 20, 3, 14.2)))
                .hasSize(2);
    }

    /** Loads just before, as of a glow plug, do not hide the pull: the highest of the four seconds before counts. */
    @Test
    void thePullIsFromTheHighestOfTheSecondsBefore() {
        List<EngineStart> starts = found(50, 60, t -> t >= 18 && t < 20 ? 11.9 : cranking(t, 20, 1, 14.2));
        assertThat(starts).hasSize(1);
        assertThat(starts.get(0).beforeV()).isCloseTo(12.55, within(0.001));
        List<EngineStart> late = found(50, 60, t -> t >= 14 && t < 20 ? 11.95 : cranking(t, 20, 1, 14.2));
        assertThat(late.get(0).beforeV()).isCloseTo(11.95, within(0.001));
    }

    /** A strong battery sinks by half a volt only, and a second's row may miss the deepest point: the source lifts it after. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 5, 10})
    void aSmallPullIsAStartWhereTheSourceLiftsTheVoltageAfter(double hertz) {
        List<EngineStart> starts = found(hertz, 200, t -> t < 100 ? 12.3 : t < 101 ? 11.8 : 12.9);
        assertThat(starts).hasSize(1);
        assertThat(starts.get(0).fromS()).isCloseTo(100, within(1.0));
        assertThat(found(hertz, 200, t -> t < 100 ? 12.3 : t < 101 ? 11.8 : 12.3))
                .as("a lamp switched on and off")
                .isEmpty();
        assertThat(found(hertz, 200, t -> t < 100 ? 13.6 : t < 101 ? 13.1 : 14.2))
                .as("a load while the source works")
                .isEmpty();
    }
}
