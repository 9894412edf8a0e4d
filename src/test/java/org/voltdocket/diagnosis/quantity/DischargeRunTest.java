package org.voltdocket.diagnosis.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.Recording;

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
        assertThat(value(found, "capacity-share/2")).isCloseTo(100 * 3 * 17.3333 / 60, within(0.02));
        assertThat(value(found, "capacity-gap/1")).isZero();
    }

    @Test
    void aShortGapIsBridgedInTime() {
        List<Measurement> found = measured(run(3, 17, 4, 4.5));
        assertThat(value(found, "capacity-share/2")).isCloseTo(85, within(0.02));
        assertThat(value(found, "capacity-gap/1")).isCloseTo(100 * 0.5 / 17, within(0.15));
    }

    @Test
    void aLongGapIsRefusedAndSaidSo() {
        List<Measurement> found = measured(run(3, 17, 4, 6));
        assertThat(value(found, "capacity-share/2")).isNaN();
        assertThat(value(found, "capacity-gap/1")).isCloseTo(100 * 2 / 17.0, within(0.3));
    }

    /** Worked: exponent 1.2, 100 Ah at 20 h; 10 A last 8.7055 h. */
    @Test
    void severalLawfulRunsGiveTheirExponent() {
        List<Measurement> found = SeveralRuns.of(runs(5, 20, 10, 8.7055, 25, Capacity.peukertHours(20, 100, 25, 1.2)));
        assertThat(value(found, "peukert-exponent/1")).isCloseTo(1.2, within(0.002));
        assertThat(value(found, "capacity-at-higher-current/1")).isLessThan(90);
    }

    @Test
    void runsInWhichCapacityRisesWithCurrentGiveNoneButSaySo() {
        List<Measurement> found = SeveralRuns.of(runs(0.53, 34.8, 1.5, 12.85, 3.04, 6.49));
        assertThat(value(found, "peukert-exponent/1")).isNaN();
        assertThat(value(found, "capacity-at-higher-current/1")).isGreaterThan(102);
    }

    @Test
    void runsAtOneCurrentTellNothingTogether() {
        assertThat(SeveralRuns.of(runs(3, 17, 3.1, 16.8))).isEmpty();
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
                .containsExactly("capacity-gap/1");
        assertThat(Facts.UNKNOWN.battery().capacityAh()).isNull();
    }
}
