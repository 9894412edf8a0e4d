package org.voltdocket.diagnosis.cause;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.cause.BatteryDecision.Tests;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.EvaluatedRule;
import org.voltdocket.diagnosis.rulebook.Rule;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** The verdict on the battery by hand, each limit from both sides. */
class BatteryDecisionTest {

    private static final Rulebook BOOK = Editions.of("2026.1");
    private static final Tests CHARGED = new Tests(true, true, false, false);
    private static final Tests DISCHARGED = new Tests(true, false, false, false);
    private static final Tests NONE = new Tests(false, false, false, false);

    private static EvaluatedRule rule(Rule.Decides decides, double outside) {
        Rule rule = new Rule(
                "r",
                "ripple",
                Optional.empty(),
                Optional.empty(),
                "V",
                "made for a test",
                "g",
                List.of(),
                decides,
                Map.of(),
                Map.of(),
                Map.of(),
                Optional.empty(),
                List.of());
        return new EvaluatedRule(rule, null, Map.of(), outside);
    }

    private static List<RankedCause> causes(double defect, double wear) {
        return List.of(
                new RankedCause(Cause.BATTERY_DEFECT, defect, List.of()),
                new RankedCause(Cause.BATTERY_WORN, wear, List.of()),
                new RankedCause(Cause.NONE, 1 - defect - wear, List.of()));
    }

    private static BatteryReason reason(List<EvaluatedRule> rules, List<RankedCause> causes, Tests tests) {
        return BatteryDecision.of(BOOK, rules, causes, tests);
    }

    @ParameterizedTest
    @CsvSource({
        "0.72, 0.18, DEFECT",
        "0.71, 0.19, KIND_OPEN",
        "0.45, 0.45, KIND_OPEN",
        "0.18, 0.72, WEAR",
        "0.26, 0.24, KIND_OPEN",
        "0.25, 0.24, CONFLICT"
    })
    void aFailureIsNamedFromFourFifthsOnAndNeedsHalfOfTheProbability(double defect, double wear, BatteryReason is) {
        assertThat(reason(List.of(rule(Rule.Decides.BATTERY, 0.31)), causes(defect, wear), CHARGED))
                .isEqualTo(is);
    }

    @Test
    void aTestPassesUpToThreeInTen() {
        assertThat(reason(List.of(rule(Rule.Decides.BATTERY, 0.30)), causes(0.4, 0.4), CHARGED))
                .isEqualTo(BatteryReason.TESTED_CHARGED);
        assertThat(reason(
                        List.of(rule(Rule.Decides.BATTERY, 0.1), rule(Rule.Decides.FAILURE, 0.9)),
                        causes(0.8, 0.1),
                        CHARGED))
                .isEqualTo(BatteryReason.DEFECT);
    }

    /** A battery that holds its voltage has not shown what it delivers. */
    @Test
    void aRestVoltageAloneDoesNotPassABattery() {
        assertThat(reason(List.of(rule(Rule.Decides.FAILURE, 0.0)), causes(0.1, 0.1), CHARGED))
                .isEqualTo(BatteryReason.NO_TEST);
        assertThat(reason(
                        List.of(rule(Rule.Decides.FAILURE, 0.0)), causes(0.1, 0.1), new Tests(true, true, true, false)))
                .isEqualTo(BatteryReason.FACTS_MISSING);
    }

    @Test
    void withoutADecidingTestTheReasonSaysWhatIsMissing() {
        assertThat(reason(List.of(), causes(0.1, 0.1), DISCHARGED)).isEqualTo(BatteryReason.TOO_DISCHARGED);
        assertThat(reason(List.of(), causes(0.9, 0.05), NONE)).isEqualTo(BatteryReason.NO_TEST);
        assertThat(reason(
                        List.of(rule(Rule.Decides.BATTERY, 0.0)), causes(0.1, 0.1), new Tests(true, true, false, true)))
                .isEqualTo(BatteryReason.CONFLICT);
    }
}
