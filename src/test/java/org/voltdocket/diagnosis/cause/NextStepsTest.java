package org.voltdocket.diagnosis.cause;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.rulebook.DiagnosticTest;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.diagnosis.rulebook.Sentences;

class NextStepsTest {

    private static final Rulebook BOOK = Editions.of("2026.1");

    private static List<RankedCause> causes(Object... ranked) {
        List<RankedCause> causes = new ArrayList<>();
        for (int i = 0; i < ranked.length; i += 2) {
            causes.add(new RankedCause((Cause) ranked[i], (Double) ranked[i + 1], List.of()));
        }
        return causes;
    }

    private static CaseDecision decision(BatteryReason battery, Leaning leaning, Object... ranked) {
        return new CaseDecision(List.of(), causes(ranked), 1, battery, leaning);
    }

    private static List<String> steps(CaseDecision decision, List<String> missing) {
        return NextSteps.of(BOOK, decision, missing, 0);
    }

    private static String plain(String key) {
        return Sentences.plain(key);
    }

    @Test
    void theStepOfTheFirstCauseComesFirstAndThatOfEveryOtherProbableCheckFollows() {
        CaseDecision wiring = decision(
                BatteryReason.TESTED_CHARGED,
                Leaning.VEHICLE_SIDE,
                Cause.WIRING,
                0.7,
                Cause.CURRENT_SENSOR,
                0.2,
                Cause.DUTY,
                0.1);
        assertThat(steps(wiring, List.of())).containsExactly(plain("next.wiring"), plain("next.current-sensor"));
        assertThat(steps(
                        decision(BatteryReason.TESTED_CHARGED, Leaning.NO_FAULT_SEEN, Cause.NONE, 0.9, Cause.DUTY, 0.1),
                        List.of()))
                .containsExactly(plain("next.none"));
    }

    /** Whatever is probable, an open case neither has its battery replaced nor is given back. */
    @ParameterizedTest
    @EnumSource
    void repairsAgreeWithTheLeaning(Leaning leaning) {
        for (Cause first : Cause.values()) {
            List<String> steps =
                    steps(decision(BatteryReason.NO_TEST, leaning, first, 0.8, Cause.NONE, 0.2), List.of());
            boolean battery = leaning == Leaning.BATTERY_SIDE;
            boolean replaces =
                    steps.contains(plain("next.battery-defect")) || steps.contains(plain("next.battery-worn"));
            assertThat(replaces && !battery).as("%s %s", leaning, first).isFalse();
            assertThat(steps.contains(plain("next.none")) && leaning != Leaning.NO_FAULT_SEEN)
                    .isFalse();
            assertThat(steps.contains(plain("next.misfit")) && leaning != Leaning.USAGE_SIDE)
                    .isFalse();
        }
    }

    @Test
    void contradictionsAreResolvedBeforeAnythingElse() {
        assertThat(steps(
                        decision(BatteryReason.TOO_DISCHARGED, Leaning.CONTRADICTORY, Cause.WIRING, 0.9),
                        List.of("battery-test", "drive-recording")))
                .containsExactly(plain("next.contradictory"));
    }

    @Test
    void aDischargedBatteryIsChargedFirstAndItsTestIsNotRepeated() {
        List<String> steps = steps(
                decision(BatteryReason.TOO_DISCHARGED, Leaning.OPEN, Cause.WIRING, 0.7, Cause.NONE, 0.3),
                List.of("battery-test", "charging-test", "battery.capacityAh"));
        assertThat(steps.get(0)).isEqualTo(plain("next.too-discharged"));
        assertThat(steps.get(1)).isEqualTo(plain("next.wiring"));
        assertThat(steps.get(2)).startsWith(plain("missing.charging-test"));
        assertThat(steps.get(3)).isEqualTo(plain("missing.facts"));
        assertThat(steps).hasSize(4);
    }

    /** By hand: source 0.6·0.8 = 0.48 and nothing 0.4·0.03 = 0.012 outside, 98 %; 0.12 and 0.388 inside, 76 %. */
    @Test
    void aTestSaysWhatEachResultWouldMean() {
        CaseDecision open =
                decision(BatteryReason.TESTED_CHARGED, Leaning.OPEN, Cause.CHARGING_SOURCE, 0.6, Cause.NONE, 0.4);
        assertThat(steps(open, List.of("charging-test")).get(0))
                .contains(plain("cause.charging-source") + " (98 %)")
                .contains(plain("cause.none") + " (76 %)");
    }

    /** By hand: the likeliest is right in 0.48 + 0.388 = 0.868 of the cases instead of 0.6; times 120 min, less 5 min. */
    @Test
    void theValueOfATestIsWhatItSavesLessWhatItCosts() {
        DiagnosticTest test = new DiagnosticTest(5, Map.of(Cause.CHARGING_SOURCE, 0.8), 0.03, "made for a test");
        List<RankedCause> open = causes(Cause.CHARGING_SOURCE, 0.6, Cause.NONE, 0.4);
        assertThat(TestValue.of(BOOK, test, open).minutes()).isCloseTo(0.268 * 120 - 5, within(1e-9));
        List<RankedCause> sure = causes(Cause.WIRING, 1.0);
        assertThat(TestValue.of(BOOK, test, sure).minutes())
                .as("nothing to learn")
                .isEqualTo(-5);
    }

    @Test
    void everyTestOfTheRuleBookHasASentence() {
        for (EvidenceKind kind : BOOK.tests().keySet()) {
            assertThat(Sentences.has("missing." + kind.id())).isTrue();
        }
        assertThat(BOOK.tests()).hasSize(5);
    }

    @Test
    void theSentenceNamesTheCauseAndItsPercent() {
        CaseDecision wiring = decision(BatteryReason.TESTED_CHARGED, Leaning.VEHICLE_SIDE, Cause.WIRING, 0.73);
        assertThat(VerdictSentence.of(BOOK, wiring, true))
                .contains(plain("cause.wiring"))
                .contains("73 %");
    }

    @Test
    void withoutEvidenceThereIsNoVerdictSentence() {
        CaseDecision prior = decision(BatteryReason.NO_TEST, Leaning.OPEN, Cause.NONE, 0.16);
        assertThat(VerdictSentence.of(BOOK, prior, false)).isEqualTo(plain("verdict.no-evidence"));
    }

    @Test
    void aProvenFaultOfTheVehicleIsNamedThoughTheBatteryIsNotJudged() {
        CaseDecision sensor =
                decision(BatteryReason.TOO_DISCHARGED, Leaning.OPEN, Cause.CURRENT_SENSOR, 0.93, Cause.NONE, 0.07);
        assertThat(VerdictSentence.of(BOOK, sensor, true))
                .contains(plain("battery.too-discharged"))
                .contains(plain("cause.current-sensor"));
        assertThat(steps(sensor, List.of("battery-test")))
                .containsExactly(plain("next.too-discharged"), plain("next.current-sensor"));
    }
}
