package org.voltdocket.diagnosis.quantity.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.quantity.Capacity;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.kernel.Interval;

/** Capacity runs of constant current made by hand: 12.6 V falling straight to 10.5 V and on. */
class DischargeRunTest {

    /** A run, a row a minute, that reaches 10.50 V after so many hours; rows within the gap are not there. */
    static Recording run(double amperes, double hours, double gapFromH, double gapToH) {
        double[] time = new double[(int) (hours * 60) + 20];
        int n = 0;
        for (int minute = 0; minute < time.length; minute++) {
            double h = minute / 60.0;
            if (h <= gapFromH || h >= gapToH) {
                time[n++] = 60 * minute;
            }
        }
        time = Arrays.copyOf(time, n);
        float[] v = new float[n];
        float[] a = new float[n];
        for (int i = 0; i < n; i++) {
            v[i] = (float) (12.6 - 2.1 * time[i] / 3600 / hours);
            a[i] = (float) -amperes;
        }
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        channels.put(Channel.MEASURED_V, v);
        channels.put(Channel.MEASURED_A, a);
        return new Recording(EvidenceKind.DISCHARGE_RECORDING, null, time, channels, List.of());
    }

    private static List<Measurement> measured(Recording recording) {
        return DischargeRun.of(recording).measurements(Made.evidence("run", recording), 60.0);
    }

    private static double value(List<Measurement> all, String quantity) {
        return all.stream()
                .filter(m -> m.quantity().equals(quantity))
                .mapToDouble(m -> m.value().value())
                .findFirst()
                .orElse(Double.NaN);
    }

    @Test
    void chargeCountsToTheCrossingOfTheEnd() {
        List<Measurement> found = measured(run(3, 17.3333, 99, 99));
        assertThat(value(found, "capacity-share")).isCloseTo(100 * 3 * 17.3333 / 60, within(0.02));
        assertThat(value(found, "capacity-gap")).isZero();
    }

    @Test
    void aShortGapIsBridgedInTime() {
        List<Measurement> found = measured(run(3, 17, 4, 4.5));
        assertThat(value(found, "capacity-share")).isCloseTo(85, within(0.02));
        assertThat(value(found, "capacity-gap")).isCloseTo(100 * 0.5 / 17, within(0.15));
    }

    @Test
    void aLongGapIsRefusedAndSaidSo() {
        List<Measurement> found = measured(run(3, 17, 4, 6));
        assertThat(value(found, "capacity-share")).isNaN();
        assertThat(value(found, "capacity-gap")).isCloseTo(100 * 2 / 17.0, within(0.3));
    }

    /** Worked: exponent 1.2, 100 Ah at 20 h; 10 A last 8.7055 h. */
    @Test
    void severalLawfulRunsGiveTheirExponent() {
        List<Measurement> found =
                CapacityRunComparison.of(runs(5, 20, 10, 8.7055, 25, Capacity.peukertHours(20, 100, 25, 1.2)));
        assertThat(value(found, "peukert-exponent")).isCloseTo(1.2, within(0.002));
        assertThat(value(found, "capacity-at-higher-current")).isLessThan(90);
    }

    @Test
    void runsInWhichCapacityRisesWithCurrentGiveNoneButSaySo() {
        List<Measurement> found = CapacityRunComparison.of(runs(0.53, 34.8, 1.5, 12.85, 3.04, 6.49));
        assertThat(value(found, "peukert-exponent")).isNaN();
        assertThat(value(found, "capacity-at-higher-current")).isGreaterThan(102);
    }

    @Test
    void runsAtOneCurrentTellNothingTogether() {
        assertThat(CapacityRunComparison.of(runs(3, 17, 3.1, 16.8))).isEmpty();
    }

    private static List<Evidence> runs(double... amperesAndHours) {
        List<Evidence> out = new ArrayList<>();
        for (int i = 0; i < amperesAndHours.length; i += 2) {
            Recording run = run(amperesAndHours[i], amperesAndHours[i + 1], 999, 999);
            out.add(Made.evidence("run" + i, run));
        }
        return out;
    }

    @Test
    void nothingIsToldWithoutANominalCapacityButTheGaps() {
        Recording recording = run(3, 17, 99, 99);
        assertThat(DischargeRun.of(recording).measurements(Made.evidence("run", recording), null))
                .extracting(Measurement::quantity)
                .containsExactly("capacity-gap");
        assertThat(Facts.UNKNOWN.battery().capacityAh()).isNull();
    }

    private static Recording recorded(Made made) {
        return made.as(EvidenceKind.DISCHARGE_RECORDING).recording();
    }

    private static Interval share(Recording recording) {
        return measured(recording).stream()
                .filter(m -> m.quantity().equals("capacity-share"))
                .map(Measurement::value)
                .findFirst()
                .orElseThrow();
    }

    /**
     * A current that falls from 6 A to 0 in 20 h, ended after 10 h: 45 Ah. Where both are sampled at the end it is found
     * between the rows; where not, it is missed by no more than a sample of the rarer one, of 3 A.
     */
    @ParameterizedTest
    @CsvSource({"1, 1, 0.02", "7, 1, 0.02", "13, 1, 0.02", "1, 7, 0.35", "13, 5, 0.65"})
    void aFallingCurrentCountsToTheCrossingHoweverRarelyItIsSampled(int everyVolt, int everyAmpere, double missedAh) {
        Made made = Made.at(1 / 60.0, 11 * 3600)
                .with(Channel.MEASURED_V, everyVolt, t -> 12.6 - 2.1 * t / 36_000)
                .with(Channel.MEASURED_A, everyAmpere, t -> -6 * (1 - t / 72_000));
        assertThat(share(recorded(made)).value()).isCloseTo(100 * 45 / 60.0, within(100 * missedAh / 60));
    }

    /** A run that goes on after 10.50 V counts no more, and one that began at another second than 0 lasts as long. */
    @Test
    void whatComesAfterTheEndAndBeforeTheBeginningDoesNotCount() {
        Recording run = run(3, 17, 4, 4.5);
        double[] later = Arrays.stream(run.timeS()).map(t -> t + 50_000).toArray();
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        channels.put(Channel.MEASURED_V, run.channel(Channel.MEASURED_V));
        channels.put(Channel.MEASURED_A, run.channel(Channel.MEASURED_A));
        Recording shifted = new Recording(EvidenceKind.DISCHARGE_RECORDING, null, later, channels, List.of());
        assertThat(value(measured(shifted), "capacity-share"))
                .isCloseTo(value(measured(run), "capacity-share"), within(1e-6));
        assertThat(value(measured(shifted), "capacity-gap"))
                .isCloseTo(value(measured(run), "capacity-gap"), within(1e-6));
        Capacity.Run told = DischargeRun.of(shifted).run().orElseThrow();
        assertThat(told.amperes()).isCloseTo(3, within(1e-4));
        assertThat(told.ampereHours()).isCloseTo(51, within(0.02));
    }

    /** Five minutes without a row are a gap, or ten times what is usual where rows are rare. */
    @ParameterizedTest
    @CsvSource({"10, 240, false", "10, 400, true", "60, 540, false", "60, 700, true"})
    void aPauseIsAGapFromFiveMinutesOrTenTimesTheUsual(double everyS, double pauseS, boolean gap) {
        Recording whole = recorded(Made.at(1 / everyS, 18 * 3600)
                .with(Channel.MEASURED_V, t -> 12.6 - 2.1 * t / 3600 / 17)
                .with(Channel.MEASURED_A, t -> t > 36_000 && t < 36_000 + pauseS ? Double.NaN : -3));
        assertThat(value(measured(whole), "capacity-gap") > 0).isEqualTo(gap);
    }

    /** Known to 2 %, and 2.5 % more where nobody told the temperature; a told one is brought to 25 °C, 1 % a kelvin. */
    @Test
    void aToldTemperatureCorrectsTheCapacityAndKnowsItBetter() {
        Made untold = Made.at(1 / 60.0, 18 * 3600)
                .with(Channel.MEASURED_V, t -> 12.6 - 2.1 * t / 3600 / 17)
                .with(Channel.MEASURED_A, t -> -3);
        Interval vague = share(recorded(untold));
        assertThat(vague.value()).isCloseTo(85, within(0.02));
        assertThat(vague.standardError()).isCloseTo(85 * Math.hypot(0.02, 0.025), within(0.01));
        Interval told = share(recorded(untold.with(Channel.AMBIENT, t -> 28)));
        assertThat(told.value()).isCloseTo(0.97 * 85, within(0.02));
        assertThat(told.standardError()).isCloseTo(0.02 * 0.97 * 85, within(0.01));
    }

    /** Half of what is missing counts as its error: 3 % of the time, 1.5 % of the capacity. */
    @Test
    void whatIsMissingWidensTheCapacity() {
        Recording gap = run(3, 17, 4, 4.5);
        double missing = value(measured(gap), "capacity-gap");
        double expected = 85 * Math.sqrt(0.02 * 0.02 + 0.025 * 0.025 + missing * missing / 40_000);
        assertThat(share(gap).standardError()).isCloseTo(expected, within(0.005));
    }

    /** Stopped before 10.50 V a run tells that all of the capacity is there, or nothing. */
    @ParameterizedTest
    @CsvSource({"19, false", "21, true"})
    void aRunStoppedShortTellsOnlyAWholeCapacity(double hours, boolean told) {
        Recording shortRun = recorded(Made.at(1 / 60.0, hours * 3600)
                .with(Channel.MEASURED_V, t -> 12.0)
                .with(Channel.MEASURED_A, t -> -3));
        List<Measurement> found = measured(shortRun);
        assertThat(value(found, "capacity-share")).isEqualTo(Double.valueOf(told ? 100 : Double.NaN));
        assertThat(DischargeRun.of(shortRun).run()).isEmpty();
    }

    /** Under the end from the first row on: nothing was taken, so nothing is told of a capacity. */
    @Test
    void aBatteryThatBeginsUnderTheEndTellsNoCapacity() {
        Recording empty = recorded(
                Made.at(1 / 60.0, 3600).with(Channel.MEASURED_V, t -> 10.2).with(Channel.MEASURED_A, t -> -3));
        assertThat(measured(empty)).isEmpty();
        assertThat(DischargeRun.of(empty).run()).isEmpty();
    }

    /** 6 A from hour 2 until 10.50 V are reached after 10 h are 60 Ah, whatever was charged before. */
    @Test
    void theDischargeOfAWholeCycleIsEvaluatedAlone() {
        Made cycle = Made.at(0.1, 46_800)
                .with(Channel.MEASURED_V, t -> t < 3600 ? 14.8 : t < 7200 ? 12.9 : 12.6 - 2.1 * (t - 7200) / 36_000)
                .with(Channel.MEASURED_A, t -> t < 3600 ? 8 : t < 7200 ? 0 : -6)
                .with(Channel.AMBIENT, t -> 25)
                .as(EvidenceKind.DISCHARGE_RECORDING);
        assertThat(DischargeRun.of(cycle.recording()).run().orElseThrow().ampereHours())
                .isCloseTo(60, within(0.1));
        assertThat(BenchQuantities.dischargeRegimes(cycle.recording()))
                .extracting(span -> span.regime())
                .containsExactly(Regime.CHARGING, Regime.REST, Regime.DISCHARGING);
    }
}
