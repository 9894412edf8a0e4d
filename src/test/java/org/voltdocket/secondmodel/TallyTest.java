package org.voltdocket.secondmodel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Regime;

/** The evaluation's own arithmetic, on assessments written by hand. */
class TallyTest {

    private static final double[][] NO_TIME = new double[Regime.values().length][Regime.values().length];

    private static Tally.Judged judged(Cause truth, Leaning right, Cause first, double stated, Leaning leaning) {
        Labelled labelled = new Labelled(
                truth.id(),
                1,
                new CaseInput(Facts.UNKNOWN, History.NONE, List.of()),
                truth,
                List.of(right),
                2.0,
                0.5,
                0.5,
                Map.of());
        Assessment said = new Assessment(
                "2026.1",
                BatteryVerdict.SOUND,
                BatteryReason.TESTED_CHARGED,
                leaning,
                List.of(new Assessment.RankedCause(first, stated, List.of())),
                List.of(),
                Map.of("sensorOffsetA", new Assessment.Estimate(2.5, 2.5 - stated, 2.5 + stated, "A")),
                Map.of(),
                "",
                List.of(),
                List.of());
        return new Tally.Judged(labelled, said, NO_TIME, NO_TIME, 4);
    }

    @Test
    void sharesAndScoresAreThoseCountedByHand() {
        Tally tally = new Tally();
        tally.judged.add(judged(Cause.NONE, Leaning.NO_FAULT_SEEN, Cause.NONE, 0.9, Leaning.NO_FAULT_SEEN));
        tally.judged.add(judged(Cause.NONE, Leaning.NO_FAULT_SEEN, Cause.WIRING, 0.6, Leaning.VEHICLE_SIDE));
        tally.judged.add(judged(Cause.WIRING, Leaning.VEHICLE_SIDE, Cause.WIRING, 0.8, Leaning.OPEN));
        tally.judged.add(judged(Cause.DUTY, Leaning.USAGE_SIDE, Cause.DUTY, 0.4, Leaning.USAGE_SIDE));
        assertThat(tally.accuracy()).isEqualTo(0.75);
        assertThat(tally.healthyBlamed()).isEqualTo(0.5);
        assertThat(tally.vehicleFound()).isZero();
        assertThat(tally.leaningsRight()).isEqualTo(0.5);
        assertThat(tally.brier()).isCloseTo((0.01 + 0.36 + 0.04 + 0.36) / 4, within(1e-12));
        assertThat(tally.offsetCoverage()).isEqualTo(0.75);
        assertThat(tally.offsetWidth()).isCloseTo(2 * (0.9 + 0.6 + 0.8 + 0.4) / 4, within(1e-12));
        assertThat(tally.offsetError()).isCloseTo(0.5, within(1e-12));
        assertThat(tally.of("wiring").judged).hasSize(1);
    }

    @Test
    void regimeTimeLeavesOutWhatCannotBeCalledAndCountsTheRestByTheSpanInForce() {
        double[] at = {10, 11, 12, 13, 14, 15};
        Map<Channel, float[]> volts = new EnumMap<>(Map.of(Channel.MEASURED_V, new float[6]));
        Recording recording = new Recording(EvidenceKind.DRIVE_RECORDING, null, at, volts, List.of());
        Regime[] truth = {Regime.REST, Regime.REST, null, Regime.CHARGING, Regime.CHARGING, Regime.CHARGING};
        double[][] seconds = Tally.regimeTime(
                recording,
                truth,
                List.of(
                        new Assessment.RegimeSpan(10, 14, Regime.REST),
                        new Assessment.RegimeSpan(14, 15, Regime.CHARGING)));
        assertThat(seconds[Regime.REST.ordinal()][Regime.REST.ordinal()]).isEqualTo(2);
        assertThat(seconds[Regime.CHARGING.ordinal()][Regime.REST.ordinal()]).isEqualTo(1);
        assertThat(seconds[Regime.CHARGING.ordinal()][Regime.CHARGING.ordinal()])
                .isEqualTo(1);
        assertThat(Tally.rightOfAll(seconds)).containsExactly(3, 4);
    }
}
