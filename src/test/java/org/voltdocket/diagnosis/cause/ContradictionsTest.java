package org.voltdocket.diagnosis.cause;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.Diagnosis;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.rulebook.Editions;

class ContradictionsTest {

    private static final OffsetDateTime TAKEN = OffsetDateTime.parse("2026-03-04T08:40:00+01:00");

    private static Evidence test(String name, OffsetDateTime at, double volts, Double amperes, CrankingStandard by) {
        return Made.evidence(name, new BatteryTest(at, volts, 20, amperes, by, null, 24.0, true, null));
    }

    private static List<Finding> found(LocalDate produced, Evidence... evidence) {
        Facts facts =
                new Facts(new Facts.BatteryFacts(null, null, null, null, produced, null, null, null), null, null, null);
        return Contradictions.in(new CaseInput(facts, History.NONE, List.of(evidence)), List.of(evidence));
    }

    private static Evidence strong() {
        return test("strong", TAKEN, 12.7, 600.0, CrankingStandard.EN);
    }

    @Test
    void evidenceFromBeforeTheBatteryWasMadeIsNamed() {
        List<Finding> found = found(LocalDate.parse("2026-03-05"), strong());
        assertThat(found).hasSize(1);
        assertThat(found.get(0).rule()).isEqualTo("evidence-before-production");
        assertThat(found.get(0).evidence()).isEqualTo("strong");
        assertThat(found(LocalDate.parse("2026-03-04"), strong()))
                .as("the same day is fine")
                .isEmpty();
        assertThat(found(null, strong())).isEmpty();
    }

    @Test
    void aRecordingWithoutAClockContradictsNoDate() {
        Evidence undated = Made.at(1, 60).with(Channel.MEASURED_V, t -> 12.5).evidence();
        assertThat(found(LocalDate.parse("2099-01-01"), undated)).isEmpty();
    }

    @Test
    void twoChargedTestsThatNoOneBatteryCanGiveAreNamed() {
        Evidence weak = test("weak", TAKEN.plusDays(1), 12.7, 300.0, CrankingStandard.EN);
        assertThat(found(null, strong(), weak)).extracting(Finding::rule).containsExactly("charged-tests-disagree");
    }

    @Test
    void testsThatMayDifferAreLeftAlone() {
        assertThat(found(null, strong(), test("near", TAKEN.plusDays(1), 12.7, 500.0, CrankingStandard.EN)))
                .as("within what instruments differ by")
                .isEmpty();
        assertThat(found(null, strong(), test("later", TAKEN.plusDays(3), 12.7, 300.0, CrankingStandard.EN)))
                .as("days apart")
                .isEmpty();
        assertThat(found(null, strong(), test("empty", TAKEN.plusDays(1), 12.2, 300.0, CrankingStandard.EN)))
                .as("at another charge")
                .isEmpty();
        assertThat(found(null, strong(), test("other", TAKEN.plusDays(1), 12.7, 300.0, CrankingStandard.DIN)))
                .as("by another standard")
                .isEmpty();
        assertThat(found(null, strong(), test("none", TAKEN.plusDays(1), 12.7, null, null)))
                .isEmpty();
    }

    @Test
    void aContradictionMakesTheCaseContradictory() {
        Evidence weak = test("weak", TAKEN.plusDays(1), 12.7, 300.0, CrankingStandard.EN);
        CaseInput input = new CaseInput(Facts.UNKNOWN, History.NONE, List.of(weak, strong()));
        assertThat(Diagnosis.assess(input, Editions.of("2026.1")).leaning()).isEqualTo(Leaning.CONTRADICTORY);
    }
}
