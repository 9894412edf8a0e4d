package org.voltdocket.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** Whatever the intake lets in is judged: the judge answers, if only that more evidence is needed. */
class AnyRecordingTest {

    private static final Rulebook BOOK = Editions.of("2026.1");

    private static Assessment judged(Recording recording, Facts facts) {
        Evidence item = Made.evidence("any", recording.as(Diagnosis.kindOf(recording)));
        Assessment said = Diagnosis.assess(new CaseInput(facts, History.NONE, List.of(item)), BOOK);
        AssessmentShapeTest.covered(recording, said.regimes().get("any"));
        said.findings().forEach(f -> assertThat(f.value()).as(f.id()).isFinite());
        said.causes().forEach(c -> assertThat(c.probability()).isBetween(0.0, 1.0));
        return said;
    }

    /** Loggers that wrote once in some seconds: longer than what is bridged between samples. */
    @ParameterizedTest
    @ValueSource(doubles = {0.02, 0.05, 0.1, 0.125, 0.15, 0.19, 0.21, 0.5})
    void aDriveSampledSlowlyIsJudged(double hertz) {
        Recording slow = Made.at(hertz, 6000)
                .with(Channel.MEASURED_V, t -> t < 300 ? 12.5 : 14.1)
                .with(Channel.REPORTED_V, t -> t < 300 ? 12.4 : 14.0)
                .with(Channel.REPORTED_A, t -> t < 300 ? -1 : 6)
                .with(Channel.REPORTED_SOC, t -> 60)
                .recording();
        judged(slow, Facts.UNKNOWN);
    }

    private static Recording random(Random chance) {
        int rows = 20 + chance.nextInt(chance.nextInt(10) == 0 ? 6000 : 800);
        double step = Math.exp(-4 + 8 * chance.nextDouble());
        double[] time = new double[rows];
        double now = chance.nextInt(3) * 1000.5;
        for (int i = 0; i < rows; i++) {
            time[i] = now;
            boolean gap = chance.nextInt(200) == 0;
            now += Math.max(0.001, step * (gap ? 400 * chance.nextDouble() : 0.5 + chance.nextDouble()));
        }
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            if (channel == Channel.MEASURED_V || chance.nextBoolean()) {
                channels.put(channel, values(chance, channel, rows));
            }
        }
        return new Recording(EvidenceKind.DRIVE_RECORDING, null, time, channels, List.of());
    }

    private static float[] values(Random chance, Channel channel, int rows) {
        double[] range = switch (channel) {
            case MEASURED_V, REPORTED_V -> new double[] {8, 16};
            case MEASURED_A, REPORTED_A -> new double[] {-80, 80};
            case REPORTED_SOC -> new double[] {0, 100};
            case ENGINE_RPM -> new double[] {0, 3000};
            case SPEED -> new double[] {0, 130};
            case COOLANT, AMBIENT -> new double[] {-40, 110};
        };
        if (chance.nextInt(6) == 0 && range[1] < 20) {
            range = new double[] {-2, 40};
        }
        double[] level = Made.steps(chance, rows, range[0], range[1], 1, 1 + chance.nextInt(400));
        double noise = chance.nextInt(3) * 0.01 * (range[1] - range[0]);
        double blank = chance.nextInt(3) == 0 ? chance.nextDouble() : 0;
        float[] out = new float[rows];
        for (int i = 0; i < rows; i++) {
            out[i] = chance.nextDouble() < blank ? Float.NaN : (float) (level[i] + noise * chance.nextGaussian());
        }
        return out;
    }

    @RepeatedTest(300)
    void aRandomRecordingIsJudged(RepetitionInfo which) {
        Random chance = new Random(which.getCurrentRepetition());
        Facts.BatteryFacts battery = new Facts.BatteryFacts(
                chance.nextBoolean() ? null : Chemistry.values()[chance.nextInt(4)],
                chance.nextBoolean() ? null : 1 + 399 * chance.nextDouble(),
                chance.nextBoolean() ? null : 20 + 2980 * chance.nextDouble(),
                CrankingStandard.EN,
                null,
                null,
                null,
                null);
        ChargingControl control = ChargingControl.values()[chance.nextInt(3)];
        judged(random(chance), new Facts(battery, new Facts.VehicleFacts(control, null, null, null, null), null, null));
    }

    @RepeatedTest(20)
    void severalRandomRecordingsOfOneCaseAreJudged(RepetitionInfo which) {
        Random chance = new Random(9000 + which.getCurrentRepetition());
        List<Evidence> all = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Recording recording = random(chance);
            all.add(Made.evidence("any" + i, recording.as(Diagnosis.kindOf(recording))));
        }
        assertThat(Diagnosis.assess(new CaseInput(Facts.UNKNOWN, History.NONE, all), BOOK)
                        .regimes())
                .hasSize(4);
    }
}
