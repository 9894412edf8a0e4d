package org.voltdocket.diagnosis.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.assess.Diagnosis;

/** Each kind of recording by its plainest example, and what lies close to it. */
class RecordingClassifierTest {

    private static EvidenceKind kind(Made made) {
        return Diagnosis.kindOf(made.recording());
    }

    private static double start(double t, double atS) {
        return t < atS ? 12.6 : t < atS + 1 ? 10 : 14.2;
    }

    @Test
    void aStartAndARunningEngineMakeADrive() {
        assertThat(kind(Made.at(10, 900).with(Channel.MEASURED_V, t -> start(t, 30))))
                .isEqualTo(EvidenceKind.DRIVE_RECORDING);
        assertThat(kind(Made.at(1, 900).with(Channel.MEASURED_V, t -> 14.2))).isEqualTo(EvidenceKind.DRIVE_RECORDING);
        assertThat(kind(Made.at(1, 900).with(Channel.MEASURED_V, t -> 12.7).with(Channel.ENGINE_RPM, t -> 900)))
                .isEqualTo(EvidenceKind.DRIVE_RECORDING);
    }

    @Test
    void oneStartSampledFastMakesACrankingRecording() {
        assertThat(kind(Made.at(50, 20).with(Channel.MEASURED_V, t -> start(t, 5))))
                .isEqualTo(EvidenceKind.CRANKING_RECORDING);
        assertThat(kind(Made.at(200, 10).with(Channel.MEASURED_V, t -> start(t, 5))))
                .isEqualTo(EvidenceKind.CRANKING_RECORDING);
        assertThat(kind(Made.at(40, 20).with(Channel.MEASURED_V, t -> start(t, 5))))
                .as("under 50 Hz")
                .isEqualTo(EvidenceKind.DRIVE_RECORDING);
        assertThat(kind(Made.at(50, 60)
                        .with(Channel.MEASURED_V, t -> t < 30 ? start(t, 5) - (t > 6 ? 1.7 : 0) : start(t, 40))))
                .as("two starts")
                .isEqualTo(EvidenceKind.DRIVE_RECORDING);
    }

    @Test
    void restThroughoutMakesAStandingRecording() {
        assertThat(kind(Made.at(0.1, 36_000).with(Channel.MEASURED_V, t -> 12.6 - 1e-6 * t)))
                .isEqualTo(EvidenceKind.STANDING_RECORDING);
        assertThat(kind(Made.at(0.1, 36_000)
                        .with(Channel.MEASURED_V, t -> 12.6 - 2e-6 * t)
                        .with(Channel.MEASURED_A, t -> -0.25)))
                .as("a drain is no capacity run")
                .isEqualTo(EvidenceKind.STANDING_RECORDING);
    }

    @Test
    void aSteadyCurrentDownToEmptyMakesADischargeRecording() {
        Made run = Made.at(0.1, 72_000)
                .with(Channel.MEASURED_V, t -> 12.5 - 2 * t / 72_000)
                .with(Channel.MEASURED_A, t -> -3);
        assertThat(kind(run)).isEqualTo(EvidenceKind.DISCHARGE_RECORDING);
        assertThat(kind(Made.at(0.1, 72_000).with(Channel.MEASURED_V, t -> 12.5 - 2 * t / 72_000)))
                .as("without a current nothing tells a capacity run")
                .isEqualTo(EvidenceKind.STANDING_RECORDING);
    }

    /** At one sample a second the logger missed the start, and the source is dead: no dip, no charging voltage. */
    private static Made missedStart() {
        double[] load = Made.steps(new java.util.Random(8), 1801, -0.25, 0, 4, 30);
        return Made.at(1, 1800).with(Channel.MEASURED_V, t -> t < 120 ? 12.5 : 12.2 - 0.0002 * t + load[(int) t]);
    }

    @Test
    void aMissedStartIsADriveByTheRoadSpeed() {
        assertThat(kind(missedStart().with(Channel.SPEED, t -> t > 150 ? 45 : 0)))
                .isEqualTo(EvidenceKind.DRIVE_RECORDING);
        assertThat(kind(missedStart().with(Channel.SPEED, t -> 0)))
                .as("a vehicle that stands is no drive")
                .isEqualTo(EvidenceKind.STANDING_RECORDING);
    }

    @Test
    void aMissedStartIsADriveByTheDriversMark() {
        Recording plain = missedStart().recording();
        Recording marked = new Recording(
                plain.kind(),
                null,
                plain.timeS(),
                java.util.Map.of(Channel.MEASURED_V, plain.channel(Channel.MEASURED_V)),
                java.util.List.of(new Recording.Mark(121, "Motor gestartet")));
        assertThat(Diagnosis.kindOf(marked)).isEqualTo(EvidenceKind.DRIVE_RECORDING);
    }

    /** Charge, rest and discharge in one file, as a bench writes it. */
    @Test
    void aWholeBenchCycleIsADischargeRecording() {
        Made cycle = Made.at(0.1, 30_000)
                .with(Channel.MEASURED_V, t -> t < 6000 ? 14.8 : t < 12_000 ? 12.9 : 12.6 - 2.2 * (t - 12_000) / 18_000)
                .with(Channel.MEASURED_A, t -> t < 6000 ? 3 : t < 12_000 ? 0 : -6);
        assertThat(kind(cycle)).isEqualTo(EvidenceKind.DISCHARGE_RECORDING);
        assertThat(kind(cycle.with(Channel.ENGINE_RPM, t -> t < 6000 ? 900 : 0)))
                .as("a vehicle is no bench")
                .isEqualTo(EvidenceKind.DRIVE_RECORDING);
    }
}
