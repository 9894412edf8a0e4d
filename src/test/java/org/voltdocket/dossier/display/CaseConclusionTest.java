package org.voltdocket.dossier.display;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.dossier.display.CaseConclusion.Action;
import org.voltdocket.dossier.display.CaseConclusion.MissingItem;
import org.voltdocket.kernel.CaseNumber;

class CaseConclusionTest {

    private static final CaseNumber NUMBER = CaseNumber.of(1);
    private static final String GUIDE = "/cases/" + NUMBER + "/tests";

    private static Assessment assessment(Leaning leaning, List<String> steps, List<String> missing) {
        return new Assessment(
                "2026.1",
                BatteryVerdict.SOUND,
                BatteryReason.TESTED_CHARGED,
                leaning,
                List.of(new RankedCause(Cause.CURRENT_SENSOR, 0.93, List.of())),
                List.of(),
                Map.of(),
                Map.of(),
                "said",
                steps,
                missing);
    }

    private static CaseConclusion conclusion(boolean mayEdit, boolean decides, String... missing) {
        return CaseConclusion.of(
                NUMBER,
                assessment(Leaning.VEHICLE_SIDE, List.of("first", "second"), List.of(missing)),
                mayEdit,
                decides,
                id -> !id.contains("."));
    }

    @Test
    void theConclusionFollowsTheLeaningAndNamesTheFirstStep() {
        CaseConclusion conclusion = conclusion(true, false);
        assertThat(conclusion.headline()).isEqualTo("answer.vehicle-side");
        assertThat(conclusion.nextStep()).isEqualTo("first");
        assertThat(conclusion.primary()).isEqualTo(new Action("answer.how", GUIDE));
        assertThat(conclusion(false, false).primary()).isEqualTo(new Action("answer.steps", "#part-next"));
    }

    @Test
    void aMissingTestLeadsToItsForm() {
        CaseConclusion conclusion = conclusion(true, false, "battery.capacityAh", "charging-test");
        assertThat(conclusion.primary().href()).isEqualTo(GUIDE);
        assertThat(conclusion.missing())
                .containsExactly(
                        new MissingItem("battery.capacityAh", "fact", "#facts"),
                        new MissingItem("charging-test", "kind", GUIDE + "/charging-test"));
    }

    @Test
    void whoMayNotEditIsSentToTheManual() {
        CaseConclusion conclusion = conclusion(false, false, "charging-test", "drive-recording");
        assertThat(conclusion.primary().href()).isEqualTo("#part-next");
        assertThat(conclusion.missing())
                .extracting(MissingItem::href)
                .containsExactly("/manual/tests#charging-test", "/manual/recordings#drive-recording");
    }

    @Test
    void whoDecidesTheClaimGoesThere() {
        assertThat(conclusion(true, true, "charging-test").primary().href()).isEqualTo("#claim");
    }

    @Test
    void onlyTheFirstMissingItemsAreShown() {
        CaseConclusion conclusion =
                conclusion(true, false, "drive-recording", "charging-test", "battery-test", "cranking-test", "a.b");
        assertThat(conclusion.missing())
                .extracting(MissingItem::href)
                .containsExactly(GUIDE, GUIDE + "/charging-test", GUIDE + "/battery-test");
        assertThat(conclusion.moreMissing()).isEqualTo(2);
    }

    @Test
    void beforeTheFirstAssessmentTheTestsComeFirst() {
        CaseConclusion conclusion = CaseConclusion.of(NUMBER, null, true, false, id -> true);
        assertThat(conclusion.headline()).isEqualTo("case.unjudged");
        assertThat(conclusion.primary().href()).isEqualTo(GUIDE);
        assertThat(CaseConclusion.of(NUMBER, null, false, false, id -> true)
                        .primary()
                        .href())
                .isEqualTo("#evidence");
    }
}
