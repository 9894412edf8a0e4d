package org.voltdocket.diagnosis.cause;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;

class MissingEvidenceTest {

    private static final Rulebook BOOK = Editions.of("2026.1");

    private static final OffsetDateTime AT = OffsetDateTime.parse("2026-03-04T08:40:00+01:00");

    private static final Facts KNOWN = new Facts(
            new Facts.BatteryFacts(Chemistry.AGM, 70.0, 700.0, CrankingStandard.EN, null, null, null, null),
            new Facts.VehicleFacts(ChargingControl.MANAGED, true, Chemistry.AGM, 70.0, null),
            null,
            null);

    private static Evidence recording(EvidenceKind kind) {
        return Made.evidence(
                kind.id(),
                Made.at(1, 60).with(Channel.MEASURED_V, t -> 12.6).as(kind).recording());
    }

    private final List<Evidence> everything = new ArrayList<>(List.of(
            Made.evidence("b", new BatteryTest(AT, 12.7, 20, 650.0, CrankingStandard.EN, 5.0, 24.0, true, null)),
            Made.evidence("k", new CrankingTest(AT, 10, 0.9, 20, null)),
            Made.evidence("c", new ChargingTest(AT, 14.2, 13.9, 0.05, 20, null)),
            recording(EvidenceKind.DRIVE_RECORDING),
            recording(EvidenceKind.STANDING_RECORDING)));

    private List<String> missing(Facts facts, BatteryReason battery, Leaning leaning, Cause sure) {
        List<RankedCause> causes = List.of(new RankedCause(sure, 1, List.of()));
        return MissingEvidence.of(
                BOOK,
                new CaseInput(facts, History.NONE, everything),
                new CaseDecision(List.of(), causes, 1, battery, leaning),
                List.of());
    }

    @Test
    void aSettledCaseLacksNothing() {
        assertThat(missing(KNOWN, BatteryReason.TESTED_CHARGED, Leaning.VEHICLE_SIDE, Cause.WIRING))
                .isEmpty();
    }

    /** An open case says what would settle it, however much is there already: the test that tells most, though it costs more. */
    @Test
    void anOpenCaseAlwaysNamesWhatIsMissing() {
        assertThat(missing(KNOWN, BatteryReason.TESTED_CHARGED, Leaning.OPEN, Cause.DUTY))
                .as("nothing to learn")
                .containsExactly("drive-recording");
        List<RankedCause> causes = List.of(
                new RankedCause(Cause.DUTY, 0.95, List.of()), new RankedCause(Cause.STANDING_DRAIN, 0.05, List.of()));
        assertThat(MissingEvidence.of(
                        BOOK,
                        new CaseInput(KNOWN, History.NONE, everything),
                        new CaseDecision(List.of(), causes, 1, BatteryReason.TESTED_CHARGED, Leaning.OPEN),
                        List.of()))
                .containsExactly("standing-recording");
    }

    /**
     * By hand, with minutes of working time: a standing recording separates drain and duty (0.3·0.95 + 0.7·0.97 − 0.7 = 0.264,
     * times 120 less 15 is 17); a charging test or a start would change nothing and only costs its time.
     */
    @Test
    void whatIsMissingIsWhatSavesMoreThanItCosts() {
        everything.clear();
        List<RankedCause> causes = List.of(
                new RankedCause(Cause.DUTY, 0.7, List.of()), new RankedCause(Cause.STANDING_DRAIN, 0.3, List.of()));
        assertThat(MissingEvidence.of(
                        BOOK,
                        new CaseInput(KNOWN, History.NONE, everything),
                        new CaseDecision(List.of(), causes, 1, BatteryReason.NO_TEST, Leaning.OPEN),
                        List.of()))
                .containsExactly("battery-test", "drive-recording", "standing-recording");
    }

    @Test
    void aRatingIsMissedOnlyWhereATestCouldBeSetAgainstIt() {
        Facts unrated = new Facts(
                new Facts.BatteryFacts(Chemistry.AGM, 70.0, null, null, null, null, null, null),
                KNOWN.vehicle(),
                null,
                null);
        assertThat(missing(unrated, BatteryReason.TESTED_CHARGED, Leaning.VEHICLE_SIDE, Cause.WIRING))
                .containsExactly("battery.ratedCrankingA");
        everything.remove(0);
        assertThat(missing(unrated, BatteryReason.TESTED_CHARGED, Leaning.VEHICLE_SIDE, Cause.WIRING))
                .isEmpty();
    }

    /** A fact that can change the decision comes before every test. */
    @Test
    void aDecisiveFactComesFirst() {
        everything.clear();
        List<RankedCause> causes = List.of(new RankedCause(Cause.NONE, 1, List.of()));
        assertThat(MissingEvidence.of(
                        BOOK,
                        new CaseInput(Facts.UNKNOWN, History.NONE, everything),
                        new CaseDecision(List.of(), causes, 1, BatteryReason.NO_TEST, Leaning.OPEN),
                        List.of("vehicle.chargingControl")))
                .startsWith("vehicle.chargingControl", "battery-test")
                .doesNotHaveDuplicates();
    }
}
