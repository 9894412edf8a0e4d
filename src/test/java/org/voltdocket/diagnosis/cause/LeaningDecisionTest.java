package org.voltdocket.diagnosis.cause;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** Which way a case leans, as a table: what is most probable, what the battery's verdict is, what was seen. */
class LeaningDecisionTest {

    private static final Rulebook BOOK = Editions.of("2026.1");

    private static List<RankedCause> causes(Cause first, double probability) {
        List<RankedCause> out = new ArrayList<>();
        out.add(new RankedCause(first, probability, List.of()));
        for (Cause cause : Cause.values()) {
            if (cause != first) {
                out.add(new RankedCause(cause, (1 - probability) / (Cause.values().length - 1), List.of()));
            }
        }
        return out;
    }

    @ParameterizedTest
    @CsvSource({
        "BATTERY_DEFECT,  0.95, FAILED,              true,  false, BATTERY_SIDE",
        "BATTERY_WORN,    0.95, FAILED,              false, false, BATTERY_SIDE",
        "BATTERY_WORN,    0.95, NOT_JUDGED,          true,  false, OPEN",
        "BATTERY_DEFECT,  0.35, FAILED,              true,  false, OPEN",
        "CURRENT_SENSOR,  0.95, FAILED,              true,  false, OPEN",
        "CHARGING_SOURCE, 0.95, SOUND,               true,  false, VEHICLE_SIDE",
        "CURRENT_SENSOR,  0.95, SOUND,               true,  false, VEHICLE_SIDE",
        "CHARGE_CONTROL,  0.95, NOT_JUDGED,          true,  false, OPEN",
        "WIRING,          0.999, NOT_JUDGED,         true,  false, OPEN",
        "STANDING_DRAIN,  0.98, SOUND,               false, false, VEHICLE_SIDE",
        "DUTY,            0.95, SOUND,               true,  false, USAGE_SIDE",
        "MISFIT,          0.95, SOUND,               true,  false, USAGE_SIDE",
        "NONE,            0.95, SOUND,               true,  false, NO_FAULT_SEEN",
        "NONE,            0.95, SOUND,               false, false, OPEN",
        "NONE,            0.95, NOT_JUDGED,          true,  false, OPEN",
        "NONE,            0.30, SOUND,               true,  false, OPEN",
        "BATTERY_DEFECT,  0.99, FAILED,              true,  true,  CONTRADICTORY",
        "NONE,            0.99, SOUND,               true,  true,  CONTRADICTORY"
    })
    void theTableOfLeanings(
            Cause first,
            double probability,
            BatteryVerdict battery,
            boolean watched,
            boolean contradiction,
            Leaning is) {
        assertThat(LeaningDecision.of(BOOK, battery, causes(first, probability), watched, contradiction))
                .isEqualTo(is);
    }

    /** Without a battery that passed, no probability of a vehicle fault is enough. */
    @ParameterizedTest
    @EnumSource(
            value = BatteryVerdict.class,
            names = {"FAILED", "NOT_JUDGED"})
    void onlyASoundBatteryLetsTheCaseLeanToTheVehicle(BatteryVerdict battery) {
        for (Cause cause : Cause.values()) {
            for (double p = 0.1; p < 1; p += 0.05) {
                assertThat(LeaningDecision.of(BOOK, battery, causes(cause, p), true, false))
                        .isNotIn(Leaning.VEHICLE_SIDE, Leaning.NO_FAULT_SEEN);
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void evidenceThatCannotBelongTogetherComesBeforeEverything(Cause cause) {
        for (BatteryVerdict battery : BatteryVerdict.values()) {
            assertThat(LeaningDecision.of(BOOK, battery, causes(cause, 0.99), true, true))
                    .isEqualTo(Leaning.CONTRADICTORY);
        }
    }

    @Test
    void everyLeaningCanBeReachedAndABatteryThatPassedIsNeverBlamed() {
        Set<Leaning> reached = EnumSet.noneOf(Leaning.class);
        for (Cause cause : Cause.values()) {
            for (BatteryVerdict battery : BatteryVerdict.values()) {
                for (double p = 0.1; p < 1; p += 0.05) {
                    Leaning leaning = LeaningDecision.of(BOOK, battery, causes(cause, p), true, false);
                    reached.add(leaning);
                    if (leaning == Leaning.BATTERY_SIDE) {
                        assertThat(battery).isEqualTo(BatteryVerdict.FAILED);
                    }
                }
            }
        }
        reached.add(LeaningDecision.of(BOOK, BatteryVerdict.SOUND, causes(Cause.NONE, 0.9), true, true));
        assertThat(reached).containsExactlyInAnyOrder(Leaning.values());
    }

    private static List<RankedCause> just(Cause first, double p, Cause second, double q, Cause third) {
        return List.of(
                new RankedCause(first, p, List.of()),
                new RankedCause(second, q, List.of()),
                new RankedCause(third, 1 - p - q, List.of()));
    }

    /** Each bar belongs to the side above it. */
    @Test
    void theBarsOfTheLeaningsByHand() {
        assertThat(LeaningDecision.of(
                        BOOK,
                        BatteryVerdict.SOUND,
                        just(Cause.WIRING, 0.90, Cause.NONE, 0.05, Cause.DUTY),
                        true,
                        false))
                .isEqualTo(Leaning.VEHICLE_SIDE);
        assertThat(LeaningDecision.of(
                        BOOK,
                        BatteryVerdict.SOUND,
                        just(Cause.WIRING, 0.899, Cause.NONE, 0.05, Cause.DUTY),
                        true,
                        false))
                .isEqualTo(Leaning.OPEN);
        assertThat(LeaningDecision.of(
                        BOOK,
                        BatteryVerdict.SOUND,
                        just(Cause.WIRING, 0.95, Cause.NONE, 0.03, Cause.DUTY),
                        false,
                        false))
                .isEqualTo(Leaning.VEHICLE_SIDE);
        assertThat(LeaningDecision.of(
                        BOOK,
                        BatteryVerdict.SOUND,
                        just(Cause.WIRING, 0.949, Cause.NONE, 0.03, Cause.DUTY),
                        false,
                        false))
                .isEqualTo(Leaning.OPEN);
        assertThat(LeaningDecision.of(
                        BOOK,
                        BatteryVerdict.SOUND,
                        just(Cause.WIRING, 0.70, Cause.CURRENT_SENSOR, 0.25, Cause.NONE),
                        true,
                        false))
                .isEqualTo(Leaning.VEHICLE_SIDE);
        assertThat(LeaningDecision.of(
                        BOOK,
                        BatteryVerdict.SOUND,
                        just(Cause.WIRING, 0.699, Cause.CURRENT_SENSOR, 0.25, Cause.NONE),
                        true,
                        false))
                .as("many small suspicions name nobody")
                .isEqualTo(Leaning.OPEN);
        assertThat(LeaningDecision.of(
                        BOOK,
                        BatteryVerdict.FAILED,
                        just(Cause.BATTERY_WORN, 0.50, Cause.NONE, 0.3, Cause.DUTY),
                        true,
                        false))
                .isEqualTo(Leaning.BATTERY_SIDE);
        assertThat(LeaningDecision.of(
                        BOOK, BatteryVerdict.SOUND, just(Cause.DUTY, 0.60, Cause.NONE, 0.3, Cause.WIRING), true, false))
                .isEqualTo(Leaning.USAGE_SIDE);
        assertThat(LeaningDecision.of(
                        BOOK, BatteryVerdict.SOUND, just(Cause.NONE, 0.60, Cause.DUTY, 0.3, Cause.WIRING), true, false))
                .isEqualTo(Leaning.NO_FAULT_SEEN);
    }
}
