package org.voltdocket.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.secondmodel.SecondModel;

/** What no change of the wrapping may do to an assessment, on one generated case of each scenario. */
class JudgePropertiesTest {

    private static final Rulebook RULES =
            Rulebook.read(JudgePropertiesTest.class.getResourceAsStream("/shared/rulebook/2026.1.yaml"));

    private static final List<CaseInput> CASES = new SecondModel()
            .scenarios().stream()
                    .map(scenario -> new SecondModel().make(scenario, 77).input())
                    .toList();

    static Stream<CaseInput> cases() {
        return CASES.stream();
    }

    static Assessment assess(CaseInput input) {
        return Diagnosis.assess(input, RULES);
    }

    @ParameterizedTest
    @MethodSource("cases")
    void theOrderOfTheEvidenceDoesNotMatter(CaseInput input) {
        Assessment first = assess(input);
        for (int i = 1; i <= 2; i++) {
            List<Evidence> shuffled = new ArrayList<>(input.evidence());
            Collections.shuffle(shuffled, new Random(i));
            assertThat(assess(new CaseInput(input.facts(), input.history(), shuffled)))
                    .isEqualTo(first);
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void aClockThatStartsElsewhereMovesTheSpansAndNothingElse(CaseInput input) {
        double shift = 4096;
        Assessment first = assess(input);
        Assessment later = assess(Recast.recordings(input, r -> Recast.at(r, Recast.shifted(r.timeS(), shift))));
        assertThat(later.leaning()).isEqualTo(first.leaning());
        assertThat(later.batteryVerdict()).isEqualTo(first.batteryVerdict());
        for (int i = 0; i < first.causes().size(); i++) {
            assertThat(later.causes().get(i).probability())
                    .isCloseTo(first.causes().get(i).probability(), within(1e-4));
        }
        assertThat(later.estimates().keySet()).isEqualTo(first.estimates().keySet());
        first.estimates()
                .forEach((name, e) -> assertThat(later.estimates().get(name).value())
                        .as(name)
                        .isCloseTo(e.value(), within(1e-4 * Math.max(1, Math.abs(e.value())))));
        first.regimes().forEach((id, spans) -> sameButShifted(later.regimes().get(id), spans, shift));
    }

    private static void sameButShifted(List<RegimeSpan> moved, List<RegimeSpan> spans, double shift) {
        assertThat(moved).hasSameSizeAs(spans);
        for (int i = 0; i < spans.size(); i++) {
            assertThat(moved.get(i).regime()).isEqualTo(spans.get(i).regime());
            assertThat(moved.get(i).from() - shift).isCloseTo(spans.get(i).from(), within(1e-6));
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void aColumnThatWasNeverSampledIsAsGoodAsNone(CaseInput input) {
        Assessment padded = assess(Recast.recordings(input, r -> {
            Map<Channel, float[]> more = Recast.channels(r);
            for (Channel channel : Channel.values()) {
                more.computeIfAbsent(channel, c -> Recast.blank(r.rows()));
            }
            return Recast.with(r, more);
        }));
        assertThat(padded).isEqualTo(assess(input));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void notesOfTheDriverChangeNothing(CaseInput input) {
        Assessment noted = assess(Recast.recordings(
                input, r -> Recast.noted(r, new Recording.Mark(r.timeS()[0], "lamps switched on"))));
        assertThat(noted).isEqualTo(assess(input));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void oneMoreDecimalOfTheVoltageTurnsNoClearVerdict(CaseInput input) {
        Assessment first = assess(input);
        Random chance = new Random(5);
        Assessment finer = assess(Recast.recordings(input, r -> {
            Map<Channel, float[]> fine = Recast.channels(r);
            float[] volts = fine.get(Channel.MEASURED_V).clone();
            for (int i = 0; i < volts.length; i++) {
                volts[i] += (float) (0.001 * (chance.nextDouble() - 0.5));
            }
            fine.put(Channel.MEASURED_V, volts);
            return Recast.with(r, fine);
        }));
        RankedCause top = first.causes().get(0);
        double now = finer.causes().stream()
                .filter(c -> c.cause() == top.cause())
                .findFirst()
                .orElseThrow()
                .probability();
        assertThat(now).isCloseTo(top.probability(), within(0.15));
        if (top.probability() > 0.75) {
            assertThat(finer.causes().get(0).cause()).isEqualTo(top.cause());
            assertThat(finer.leaning()).isEqualTo(first.leaning());
        }
    }

    /** The two halves of a drive may prove less than the whole, but not the contrary. */
    @ParameterizedTest
    @MethodSource("cases")
    void aDriveInTwoPartsDoesNotTurnTheVerdictRound(CaseInput input) {
        Leaning whole = assess(input).leaning();
        List<Evidence> parts = new ArrayList<>();
        for (Evidence item : input.evidence()) {
            if (item.reading() instanceof Recording r && r.kind() == EvidenceKind.DRIVE_RECORDING) {
                int half = r.rows() / 2;
                parts.add(Recast.part(item, "a", Recast.slice(r, 0, half)));
                parts.add(Recast.part(item, "b", Recast.slice(r, half, r.rows())));
            } else {
                parts.add(item);
            }
        }
        Leaning split =
                assess(new CaseInput(input.facts(), input.history(), parts)).leaning();
        assertThat(List.of(whole, Leaning.OPEN)).contains(split);
    }

    @Test
    void withoutEvidenceTheCaseStaysOpenAndSaysWhatIsMissing() {
        Assessment said = assess(new CaseInput(Facts.UNKNOWN, History.NONE, List.of()));
        assertThat(said.leaning()).isEqualTo(Leaning.OPEN);
        assertThat(said.batteryVerdict()).isEqualTo(BatteryVerdict.UNDETERMINED);
        assertThat(said.missing()).isNotEmpty();
        assertThat(said.estimates()).isEmpty();
    }

    @Test
    void theCasesAboveAreJudgedDifferently() {
        List<CaseInput> all = cases().toList();
        assertThat(all.stream().map(JudgePropertiesTest::assess).distinct().count())
                .isEqualTo(all.size());
    }
}
