package org.voltdocket.worlds;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.worlds.ceraolo.CeraoloWorld;

/** A drive recorded once a second in steps of 0.05 V gives the verdict that ten rows a second give. */
class SamplingTest {

    private static final double STEP_V = 0.05;
    private static final double FAST_S = 0.15;
    private static final int SEEDS = 3;

    private final Rulebook rulebook = Editions.of("2026.1");

    @Test
    void theVerdictDoesNotDependOnTheRateOfSampling() {
        List<String> verdicts = new ArrayList<>();
        List<String> leanings = new ArrayList<>();
        int cases = 0;
        World world = new CeraoloWorld();
        for (Fault fault : Fault.values()) {
            for (long seed = 1; seed <= SEEDS; seed++) {
                CaseInput fast = CaseMaker.make(world, fault, seed).input();
                if (fast.evidence().stream().anyMatch(SamplingTest::isFastDrive)) {
                    cases++;
                    Assessment at10 = assess(fast);
                    Assessment at1 = assess(slowed(fast));
                    String name = fault.id() + " " + seed;
                    if (at10.batteryVerdict() != at1.batteryVerdict()) {
                        verdicts.add(name);
                    }
                    if (at10.leaning() != at1.leaning()) {
                        leanings.add(name + ": " + at10.leaning() + " and " + at1.leaning());
                    }
                }
            }
        }
        assertThat(cases).isGreaterThan(20);
        assertThat(verdicts.size()).as("%s of %d", verdicts, cases).isLessThanOrEqualTo(cases / 20);
        assertThat(leanings.size()).as("%s of %d", leanings, cases).isLessThanOrEqualTo(cases / 10);
    }

    private Assessment assess(CaseInput input) {
        List<Evidence> evidence = input.evidence().stream()
                .map(item -> item.reading() instanceof Recording recording
                        ? new Evidence(
                                item.id(), item.sha256(), item.origin(), recording.as(Diagnosis.kindOf(recording)))
                        : item)
                .toList();
        return Diagnosis.assess(new CaseInput(input.facts(), input.history(), evidence), rulebook);
    }

    private static boolean isFastDrive(Evidence item) {
        return item.reading() instanceof Recording recording
                && recording.kind() == EvidenceKind.DRIVE_RECORDING
                && recording.durationS() / recording.rows() < FAST_S;
    }

    private static CaseInput slowed(CaseInput input) {
        List<Evidence> evidence = input.evidence().stream()
                .map(item -> isFastDrive(item)
                        ? new Evidence(item.id(), item.sha256(), item.origin(), slowed((Recording) item.reading()))
                        : item)
                .toList();
        return new CaseInput(input.facts(), input.history(), evidence);
    }

    /** The first row of each second; a channel that it does not have takes its last value of the second before. */
    private static Recording slowed(Recording recording) {
        double[] time = recording.timeS();
        List<Integer> kept = new ArrayList<>();
        double next = time[0];
        for (int row = 0; row < time.length; row++) {
            if (time[row] >= next) {
                kept.add(row);
                next = time[row] + 1;
            }
        }
        double[] seconds = kept.stream().mapToDouble(row -> time[row]).toArray();
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            if (recording.has(channel)) {
                channels.put(channel, thinned(recording.channel(channel), kept));
            }
        }
        float[] volts = channels.get(Channel.MEASURED_V);
        for (int i = 0; i < volts.length; i++) {
            volts[i] = Sampler.rounded(volts[i], STEP_V);
        }
        return new Recording(
                recording.kind(), recording.startedAt().orElse(null), seconds, channels, recording.marks());
    }

    private static float[] thinned(float[] values, List<Integer> rows) {
        float[] out = new float[rows.size()];
        int from = 0;
        for (int i = 0; i < out.length; i++) {
            out[i] = Float.NaN;
            for (int row = from; row <= rows.get(i); row++) {
                out[i] = Float.isNaN(values[row]) ? out[i] : values[row];
            }
            from = rows.get(i) + 1;
        }
        return out;
    }
}
