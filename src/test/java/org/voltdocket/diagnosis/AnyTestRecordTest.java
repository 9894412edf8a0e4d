package org.voltdocket.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** Test records with anything left out and any value that an instrument can show, beside facts with anything left out. */
class AnyTestRecordTest {

    private static final Rulebook BOOK = Editions.of("2026.1");
    private static final OffsetDateTime DAY = OffsetDateTime.parse("2026-03-04T08:40:00+01:00");

    private final List<Evidence> evidence = new ArrayList<>();
    private Random chance;

    private Double maybe(double low, double high) {
        return chance.nextInt(3) == 0 ? null : between(low, high);
    }

    private double between(double low, double high) {
        return low + (high - low) * chance.nextDouble();
    }

    private <E> E maybe(E[] all) {
        int which = chance.nextInt(all.length + 1);
        return which == all.length ? null : all[which];
    }

    private LocalDate maybeDay() {
        return chance.nextInt(3) == 0 ? null : DAY.toLocalDate().minusDays(chance.nextInt(4000) - 100);
    }

    private Reading reading() {
        OffsetDateTime at = DAY.plusHours(chance.nextInt(400));
        Boolean charged = maybe(new Boolean[] {true, false});
        return switch (chance.nextInt(3)) {
            case 0 ->
                new BatteryTest(
                        at,
                        between(0, 20),
                        between(-40, 80),
                        maybe(0, 3000),
                        maybe(CrankingStandard.values()),
                        maybe(0.1, 100),
                        maybe(0, 200),
                        charged,
                        null);
            case 1 -> new CrankingTest(at, between(0, 14), maybe(0.1, 20), between(-40, 80), null);
            default -> {
                Double idle = maybe(0, 20);
                yield new ChargingTest(
                        at,
                        idle,
                        idle == null ? Double.valueOf(13) : maybe(0, 20),
                        maybe(0, 10),
                        between(-40, 120),
                        null);
            }
        };
    }

    @RepeatedTest(400)
    void theJudgeAnswers(RepetitionInfo which) {
        chance = new Random(which.getCurrentRepetition());
        for (int i = chance.nextInt(6); i >= 0; i--) {
            evidence.add(Made.evidence("record " + i, reading()));
        }
        Facts facts = new Facts(
                new Facts.BatteryFacts(
                        maybe(Chemistry.values()),
                        maybe(1, 400),
                        maybe(20, 3000),
                        maybe(CrankingStandard.values()),
                        maybeDay(),
                        maybeDay(),
                        maybeDay(),
                        maybe(0, 300_000)),
                new Facts.VehicleFacts(
                        maybe(ChargingControl.values()),
                        maybe(new Boolean[] {true, false}),
                        maybe(Chemistry.values()),
                        maybe(1, 400),
                        maybe(0, 400_000)),
                null,
                maybe(new Integer[] {0, 1, 5, 20}));
        Assessment said = Diagnosis.assess(new CaseInput(facts, History.NONE, evidence), BOOK);
        assertThat(said.said()).isNotBlank().doesNotContain("{");
        assertThat(said.causes().stream()
                        .mapToDouble(Assessment.RankedCause::probability)
                        .sum())
                .isBetween(1 - 1e-9, 1 + 1e-9);
        assertThat(said.findings()).extracting(Assessment.Finding::id).doesNotHaveDuplicates();
        if (said.leaning() == Leaning.OPEN) {
            assertThat(said.missing()).isNotEmpty();
        }
        assertThat(said.nextSteps()).isNotEmpty();
    }
}
