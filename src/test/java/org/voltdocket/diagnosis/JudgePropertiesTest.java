package org.voltdocket.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
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
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.secondmodel.SecondModel;

/** What no change of the wrapping may do to an assessment, on one generated case of each scenario. */
class JudgePropertiesTest {

    /** A case and the edition of the rule book that it is judged by. */
    record Tried(Rulebook book, String scenario, CaseInput input, Assessment first) {

        Assessment assess(CaseInput other) {
            return Diagnosis.assess(other, book);
        }

        @Override
        public String toString() {
            return book.edition() + " " + scenario;
        }
    }

    private static final List<Tried> CASES = tried();

    private static List<Tried> tried() {
        SecondModel model = new SecondModel();
        List<Tried> all = new ArrayList<>();
        for (String scenario : model.scenarios()) {
            CaseInput input = model.make(scenario, 77).input();
            Editions.all().forEach(book -> all.add(new Tried(book, scenario, input, Diagnosis.assess(input, book))));
        }
        return all;
    }

    static Stream<Tried> cases() {
        return CASES.stream();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void theOrderOfTheEvidenceDoesNotMatter(Tried tried) {
        CaseInput input = tried.input();
        Assessment first = tried.first();
        for (int i = 1; i <= 2; i++) {
            List<Evidence> shuffled = new ArrayList<>(input.evidence());
            Collections.shuffle(shuffled, new Random(i));
            assertThat(tried.assess(new CaseInput(input.facts(), input.history(), shuffled)))
                    .isEqualTo(first);
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void aClockThatStartsElsewhereMovesTheSpansAndNothingElse(Tried tried) {
        double shift = 4096;
        CaseInput input = tried.input();
        Assessment first = tried.first();
        Assessment later = tried.assess(Recast.recordings(input, r -> Recast.at(r, Recast.shifted(r.timeS(), shift))));
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

    /**
     * A logger's clock that runs half a per mille fast moves every time, so no last digit stays: the leaning, a clear first
     * cause and the intervals do.
     */
    @ParameterizedTest
    @MethodSource("cases")
    void aClockThatRunsFastTurnsNothing(Tried tried) {
        Assessment fast = tried.assess(Recast.recordings(
                tried.input(),
                r -> Recast.at(r, Arrays.stream(r.timeS()).map(t -> t * 1.0005).toArray())));
        RankedCause top = tried.first().causes().get(0);
        assertThat(fast.batteryVerdict()).isEqualTo(tried.first().batteryVerdict());
        if (top.probability() > 0.75) {
            assertThat(fast.leaning()).isEqualTo(tried.first().leaning());
            assertThat(fast.causes().get(0).cause()).isEqualTo(top.cause());
        }
        tried.first().estimates().forEach((name, e) -> {
            double slack = 0.25 * (e.high() - e.low()) + 1e-3 * Math.abs(e.value()) + 1e-3;
            if (fast.estimates().containsKey(name)) {
                assertThat(fast.estimates().get(name).value()).as(name).isBetween(e.low() - slack, e.high() + slack);
            }
        });
    }

    /** The parts of a recording put together again are the recording. */
    @ParameterizedTest
    @MethodSource("cases")
    void partsJoinedAgainAreJudgedAsTheWhole(Tried tried) {
        Assessment joined = tried.assess(Recast.recordings(tried.input(), r -> {
            int third = r.rows() / 3;
            return Recast.joined(r, Recast.slice(r, 0, third), Recast.slice(r, third, r.rows()));
        }));
        assertThat(joined).isEqualTo(tried.first());
    }

    /**
     * The same drive handed in under two names is one fact, not two. Where another item looks at the same thing (the least
     * voltage of a start), the mean of the looks moves a little towards the one that is there twice.
     */
    @ParameterizedTest
    @MethodSource("cases")
    void theSameDriveTwiceProvesNoMoreThanOnce(Tried tried) {
        CaseInput input = tried.input();
        List<Evidence> twice = new ArrayList<>(input.evidence());
        input.evidence().stream()
                .filter(e -> e.reading().kind() == EvidenceKind.DRIVE_RECORDING)
                .forEach(e -> twice.add(Recast.part(e, "again", (Recording) e.reading())));
        Assessment said = tried.assess(new CaseInput(input.facts(), input.history(), twice));
        for (RankedCause cause : tried.first().causes()) {
            double now = said.causes().stream()
                    .filter(c -> c.cause() == cause.cause())
                    .mapToDouble(RankedCause::probability)
                    .sum();
            assertThat(now).as(cause.cause().id()).isCloseTo(cause.probability(), within(0.01));
        }
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
    void aColumnThatWasNeverSampledIsAsGoodAsNone(Tried tried) {
        Assessment padded = tried.assess(Recast.recordings(tried.input(), r -> {
            Map<Channel, float[]> more = Recast.channels(r);
            for (Channel channel : Channel.values()) {
                more.computeIfAbsent(channel, c -> Recast.blank(r.rows()));
            }
            return Recast.with(r, more);
        }));
        assertThat(padded).isEqualTo(tried.first());
    }

    @ParameterizedTest
    @MethodSource("cases")
    void notesOfTheDriverChangeNothing(Tried tried) {
        Assessment noted = tried.assess(Recast.recordings(
                tried.input(), r -> Recast.noted(r, new Recording.Mark(r.timeS()[0], "lamps switched on"))));
        assertThat(noted).isEqualTo(tried.first());
    }

    @ParameterizedTest
    @MethodSource("cases")
    void oneMoreDecimalOfTheVoltageTurnsNoClearVerdict(Tried tried) {
        CaseInput input = tried.input();
        Assessment first = tried.first();
        Random chance = new Random(5);
        Assessment finer = tried.assess(Recast.recordings(input, r -> {
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
    void aDriveInTwoPartsDoesNotTurnTheVerdictRound(Tried tried) {
        CaseInput input = tried.input();
        Leaning whole = tried.first().leaning();
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
        Leaning split = tried.assess(new CaseInput(input.facts(), input.history(), parts))
                .leaning();
        assertThat(List.of(whole, Leaning.OPEN)).contains(split);
    }

    @Test
    void withoutEvidenceTheCaseStaysOpenAndSaysWhatIsMissing() {
        Assessment said = Diagnosis.assess(
                new CaseInput(Facts.UNKNOWN, History.NONE, List.of()),
                CASES.get(0).book());
        assertThat(said.leaning()).isEqualTo(Leaning.OPEN);
        assertThat(said.batteryVerdict()).isEqualTo(BatteryVerdict.NOT_JUDGED);
        assertThat(said.missing()).isNotEmpty();
        assertThat(said.estimates()).isEmpty();
    }

    @Test
    void theCasesAboveAreJudgedDifferently() {
        assertThat(CASES.stream().map(Tried::first).distinct().count()).isEqualTo(CASES.size());
    }
}
