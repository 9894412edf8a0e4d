package org.voltdocket.diagnosis.quantity.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.kernel.Sha256;

/** A vehicle that says the truth late must not look like one with a bad cable; one that says too much must. */
class LateVoltageTest {

    private static final double STEP_S = 0.25;
    private static final int SECONDS = 1500;
    /** In place of a burst's length: on for one quarter of a second in four, in an order that follows no clock. */
    private static final double SWITCHING = -1;

    @Test
    void shortBurstsReportedLateAreNoGap() {
        assertThat(gaps(6, 1.5, 0)).allSatisfy(gap -> assertThat(gap).isBetween(-0.1, 0.1));
    }

    @Test
    void aSourceThatSwitchesFasterThanItIsReportedIsNoGap() {
        assertThat(gaps(SWITCHING, 0, 0)).allSatisfy(gap -> assertThat(gap).isBetween(-0.1, 0.1));
    }

    @Test
    void longChargingReportedTooHighIsAGap() {
        assertThat(gaps(50, 1.5, 0.6))
                .singleElement()
                .satisfies(gap -> assertThat(gap).isBetween(0.5, 0.7));
    }

    /** Values of the gap while charging for bursts of a length each minute, a delay and an excess while charging. */
    private static List<Double> gaps(double burstS, double delayS, double excessV) {
        int n = (int) (SECONDS / STEP_S);
        double[] time = new double[n];
        float[] measured = new float[n];
        float[] reported = new float[n];
        for (int i = 0; i < n; i++) {
            time[i] = i * STEP_S;
            measured[i] = (float) volts(time[i], burstS);
            double then = volts(time[i] - delayS, burstS);
            reported[i] = i % 4 == 0 ? (float) (then + (then > 13.5 ? excessV : 0)) : Float.NaN;
        }
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        channels.put(Channel.MEASURED_V, measured);
        channels.put(Channel.REPORTED_V, reported);
        Recording drive = new Recording(EvidenceKind.DRIVE_RECORDING, null, time, channels, List.of());
        Evidence item = new Evidence("drive", Sha256.of(new byte[] {1}), Origin.WORKSHOP, drive);
        List<Double> out = new ArrayList<>();
        for (Measurement one : DriveQuantities.of(item, new MeasurementContext(Facts.UNKNOWN, 20))
                .measurements()) {
            if (one.quantity().equals("gap-while-charging")) {
                out.add(one.value().value());
            }
        }
        return out;
    }

    /** Rest, a start at 40 s, then bursts at charging voltage from the 10th second of each minute. */
    private static double volts(double t, double burstS) {
        if (t < 40) {
            return 12.6;
        }
        if (t < 41) {
            return 9.8;
        }
        if (burstS == SWITCHING) {
            long quarter = Math.round(t / STEP_S);
            return quarter * quarter * 7919 % 101 < 25 ? 14.6 : 12.5;
        }
        double second = t % 60;
        return second >= 10 && second < 10 + burstS ? 14.6 : 12.5;
    }
}
