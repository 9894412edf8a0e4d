package org.voltdocket.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.Facts.BatteryFacts;
import org.voltdocket.diagnosis.Facts.VehicleFacts;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;

/** A fact that would change the decision opens the case and is asked for first. */
class MissingFactsTest {

    private static final OffsetDateTime AT = OffsetDateTime.parse("2026-03-04T08:40:00+01:00");
    private static final BatteryFacts LABEL = new BatteryFacts(
            Chemistry.EFB, 70.0, 700.0, CrankingStandard.EN, LocalDate.parse("2021-03-01"), null, null, null);
    private static final VehicleFacts VEHICLE =
            new VehicleFacts(ChargingControl.MANAGED, true, Chemistry.EFB, 70.0, null);

    private static Assessment assess(BatteryFacts battery, VehicleFacts vehicle, double crankingA) {
        Evidence test = Made.evidence(
                "test", new BatteryTest(AT, 12.7, 20, crankingA, CrankingStandard.EN, null, 14.0, true, null));
        Evidence charging = Made.evidence("charging", new ChargingTest(AT, 14.2, 14.0, 0.05, 20, null));
        return Diagnosis.assess(
                new CaseInput(new Facts(battery, vehicle, null, null), History.NONE, List.of(test, charging)),
                Editions.of("2026.1"));
    }

    @Test
    void aWornBatteryWithItsLabelIsFailed() {
        Assessment said = assess(LABEL, VEHICLE, 380);
        assertThat(said.batteryVerdict()).isEqualTo(BatteryVerdict.FAILED);
        assertThat(said.leaning()).isEqualTo(Leaning.BATTERY_SIDE);
    }

    @ParameterizedTest
    @ValueSource(doubles = {300, 380, 450, 520, 600})
    void withoutItsLabelItIsNeitherSoundNorFailedAndTheRatingIsAskedForFirst(double crankingA) {
        Assessment said = assess(null, null, crankingA);
        assertThat(said.batteryVerdict()).isEqualTo(BatteryVerdict.NOT_JUDGED);
        assertThat(said.batteryReason()).isEqualTo(BatteryReason.FACTS_MISSING);
        assertThat(said.leaning()).isEqualTo(Leaning.OPEN);
        assertThat(said.missing()).startsWith("battery.ratedCrankingA");
        assertThat(said.nextSteps().get(0)).contains("rated cranking current");
    }

    /** Age turns wear into a defect by degrees: no single day changes what is said. */
    @Test
    void noDayOfAgeTurnsWearIntoADefect() {
        double before = Double.NaN;
        for (int months = 36; months <= 60; months++) {
            BatteryFacts aged = new BatteryFacts(
                    Chemistry.EFB,
                    70.0,
                    700.0,
                    CrankingStandard.EN,
                    AT.toLocalDate().minusMonths(months),
                    null,
                    null,
                    null);
            double wear = assess(aged, VEHICLE, 380).causes().stream()
                    .filter(c -> c.cause() == Cause.BATTERY_WORN)
                    .mapToDouble(Assessment.RankedCause::probability)
                    .sum();
            assertThat(Double.isNaN(before) || Math.abs(wear - before) < 0.12)
                    .as("%s months: %s after %s", months, wear, before)
                    .isTrue();
            before = wear;
        }
    }

    /** 12.4 V at -3 °C is not a charged battery, whatever the temperature correction adds. */
    @Test
    void anUnchargedColdTestDoesNotJudge() {
        Evidence cold = Made.evidence(
                "cold", new BatteryTest(AT, 12.4, -3, 380.0, CrankingStandard.EN, null, 14.0, null, null));
        Assessment said = Diagnosis.assess(
                new CaseInput(new Facts(LABEL, VEHICLE, null, null), History.NONE, List.of(cold)),
                Editions.of("2026.1"));
        assertThat(said.batteryReason()).isEqualTo(BatteryReason.TOO_DISCHARGED);
        assertThat(said.leaning()).isEqualTo(Leaning.OPEN);
    }

    @Test
    void withoutEvidenceThereIsNoVerdictSentence() {
        Assessment said =
                Diagnosis.assess(new CaseInput(Facts.UNKNOWN, History.NONE, List.of()), Editions.of("2026.1"));
        assertThat(said.said()).doesNotContain("%");
        assertThat(said.nextSteps()).isNotEmpty().noneMatch(step -> step.startsWith("Replace"));
    }
}
