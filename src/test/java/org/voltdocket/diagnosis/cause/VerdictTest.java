package org.voltdocket.diagnosis.cause;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import org.voltdocket.diagnosis.rulebook.EvaluatedRule;
import org.voltdocket.diagnosis.rulebook.Rule;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** Which way a case leans, as a table: what is most probable, what the battery's verdict is, what was seen. */
class VerdictTest {

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
        "BATTERY_DEFECT,  0.95, DEFECTIVE,           true,  false, BATTERY_SIDE",
        "BATTERY_WORN,    0.95, WORN,                false, false, BATTERY_SIDE",
        "BATTERY_WORN,    0.95, UNDETERMINED,        true,  false, OPEN",
        "BATTERY_DEFECT,  0.95, RECHARGE_AND_REPEAT, true,  false, OPEN",
        "BATTERY_DEFECT,  0.35, DEFECTIVE,           true,  false, OPEN",
        "CHARGING_SOURCE, 0.95, SOUND,               true,  false, VEHICLE_SIDE",
        "CURRENT_SENSOR,  0.95, SOUND,               true,  false, VEHICLE_SIDE",
        "CHARGE_CONTROL,  0.95, UNDETERMINED,        true,  false, VEHICLE_SIDE",
        "WIRING,          0.95, RECHARGE_AND_REPEAT, true,  false, VEHICLE_SIDE",
        "STANDING_DRAIN,  0.98, SOUND,               false, false, VEHICLE_SIDE",
        "DUTY,            0.95, SOUND,               true,  false, USAGE_SIDE",
        "MISFIT,          0.95, SOUND,               true,  false, USAGE_SIDE",
        "NONE,            0.95, SOUND,               true,  false, NO_FAULT_SEEN",
        "NONE,            0.95, SOUND,               false, false, OPEN",
        "NONE,            0.95, UNDETERMINED,        true,  false, OPEN",
        "NONE,            0.30, SOUND,               true,  false, OPEN",
        "BATTERY_DEFECT,  0.99, DEFECTIVE,           true,  true,  CONTRADICTORY",
        "NONE,            0.99, SOUND,               true,  true,  CONTRADICTORY"
    })
    void theTableOfLeanings(
            Cause first,
            double probability,
            BatteryVerdict battery,
            boolean watched,
            boolean contradiction,
            Leaning is) {
        assertThat(Verdict.leaning(BOOK, battery, causes(first, probability), watched, contradiction))
                .isEqualTo(is);
    }

    /** A vehicle is blamed later where nothing judged the battery. */
    @Test
    void anUntestedBatteryRaisesTheBarForTheVehicle() {
        List<RankedCause> likely = causes(Cause.CURRENT_SENSOR, 0.65);
        assertThat(Verdict.leaning(BOOK, BatteryVerdict.SOUND, likely, true, false))
                .isEqualTo(Leaning.VEHICLE_SIDE);
        assertThat(Verdict.leaning(BOOK, BatteryVerdict.UNDETERMINED, likely, true, false))
                .isEqualTo(Leaning.OPEN);
    }

    @ParameterizedTest
    @EnumSource
    void evidenceThatCannotBelongTogetherComesBeforeEverything(Cause cause) {
        for (BatteryVerdict battery : BatteryVerdict.values()) {
            assertThat(Verdict.leaning(BOOK, battery, causes(cause, 0.99), true, true))
                    .isEqualTo(Leaning.CONTRADICTORY);
        }
    }

    @Test
    void everyLeaningCanBeReachedAndABatteryThatPassedIsNeverBlamed() {
        Set<Leaning> reached = EnumSet.noneOf(Leaning.class);
        for (Cause cause : Cause.values()) {
            for (BatteryVerdict battery : BatteryVerdict.values()) {
                for (double p = 0.1; p < 1; p += 0.05) {
                    Leaning leaning = Verdict.leaning(BOOK, battery, causes(cause, p), true, false);
                    reached.add(leaning);
                    if (leaning == Leaning.BATTERY_SIDE) {
                        assertThat(battery).isIn(BatteryVerdict.WORN, BatteryVerdict.DEFECTIVE);
                    }
                }
            }
        }
        reached.add(Verdict.leaning(BOOK, BatteryVerdict.SOUND, causes(Cause.NONE, 0.9), true, true));
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
        assertThat(Verdict.leaning(
                        BOOK, BatteryVerdict.SOUND, just(Cause.WIRING, 0.60, Cause.NONE, 0.3, Cause.DUTY), true, false))
                .isEqualTo(Leaning.VEHICLE_SIDE);
        assertThat(Verdict.leaning(
                        BOOK,
                        BatteryVerdict.SOUND,
                        just(Cause.WIRING, 0.599, Cause.NONE, 0.3, Cause.DUTY),
                        true,
                        false))
                .isEqualTo(Leaning.OPEN);
        assertThat(Verdict.leaning(
                        BOOK,
                        BatteryVerdict.SOUND,
                        just(Cause.WIRING, 0.85, Cause.NONE, 0.1, Cause.DUTY),
                        false,
                        false))
                .isEqualTo(Leaning.VEHICLE_SIDE);
        assertThat(Verdict.leaning(
                        BOOK,
                        BatteryVerdict.SOUND,
                        just(Cause.WIRING, 0.849, Cause.NONE, 0.1, Cause.DUTY),
                        false,
                        false))
                .isEqualTo(Leaning.OPEN);
        assertThat(Verdict.leaning(
                        BOOK,
                        BatteryVerdict.SOUND,
                        just(Cause.WIRING, 0.40, Cause.CURRENT_SENSOR, 0.35, Cause.NONE),
                        true,
                        false))
                .isEqualTo(Leaning.VEHICLE_SIDE);
        assertThat(Verdict.leaning(
                        BOOK,
                        BatteryVerdict.SOUND,
                        just(Cause.WIRING, 0.399, Cause.CURRENT_SENSOR, 0.35, Cause.NONE),
                        true,
                        false))
                .as("many small suspicions name nobody")
                .isEqualTo(Leaning.OPEN);
        assertThat(Verdict.leaning(
                        BOOK,
                        BatteryVerdict.WORN,
                        just(Cause.BATTERY_WORN, 0.60, Cause.NONE, 0.3, Cause.DUTY),
                        true,
                        false))
                .isEqualTo(Leaning.BATTERY_SIDE);
        assertThat(Verdict.leaning(
                        BOOK, BatteryVerdict.SOUND, just(Cause.DUTY, 0.60, Cause.NONE, 0.3, Cause.WIRING), true, false))
                .isEqualTo(Leaning.USAGE_SIDE);
        assertThat(Verdict.leaning(
                        BOOK, BatteryVerdict.SOUND, just(Cause.NONE, 0.60, Cause.DUTY, 0.3, Cause.WIRING), true, false))
                .isEqualTo(Leaning.NO_FAULT_SEEN);
    }

    @Test
    void theBarsOfTheBatteryByHand() {
        List<RankedCause> even = just(Cause.BATTERY_DEFECT, 0.25, Cause.BATTERY_WORN, 0.25, Cause.NONE);
        assertThat(Verdict.battery(BOOK, List.of(decides(0.31)), even, true, true))
                .as("as probable a defect as wear is a defect, from one half on")
                .isEqualTo(BatteryVerdict.DEFECTIVE);
        assertThat(Verdict.battery(BOOK, List.of(decides(0.30)), even, true, true))
                .as("up to three in ten it passed")
                .isEqualTo(BatteryVerdict.SOUND);
    }

    private static EvaluatedRule decides(double outside) {
        Rule rule = new Rule(
                "r",
                "ripple",
                Optional.empty(),
                Optional.empty(),
                "V",
                "made for a test",
                "g",
                List.of(),
                Rule.Decides.BATTERY,
                Map.of(),
                Map.of(),
                Map.of(),
                Optional.empty(),
                List.of());
        return new EvaluatedRule(rule, null, Map.of(), outside);
    }

    private static BatteryVerdict battery(
            List<EvaluatedRule> judged, Cause first, boolean tested, boolean enoughCharge) {
        return Verdict.battery(BOOK, judged, causes(first, 0.8), tested, enoughCharge);
    }

    @Test
    void theTableOfBatteryVerdicts() {
        List<EvaluatedRule> failed = List.of(decides(0.1), decides(0.9));
        List<EvaluatedRule> passed = List.of(decides(0.1), decides(0.2));
        assertThat(battery(failed, Cause.BATTERY_DEFECT, true, true)).isEqualTo(BatteryVerdict.DEFECTIVE);
        assertThat(battery(failed, Cause.BATTERY_WORN, true, true)).isEqualTo(BatteryVerdict.WORN);
        assertThat(battery(passed, Cause.NONE, true, true)).isEqualTo(BatteryVerdict.SOUND);
        assertThat(battery(passed, Cause.NONE, true, false)).isEqualTo(BatteryVerdict.RECHARGE_AND_REPEAT);
        assertThat(battery(List.of(), Cause.NONE, true, false)).isEqualTo(BatteryVerdict.RECHARGE_AND_REPEAT);
        assertThat(battery(List.of(), Cause.NONE, false, false)).isEqualTo(BatteryVerdict.UNDETERMINED);
        assertThat(battery(failed, Cause.CHARGING_SOURCE, true, true))
                .as("a failure that something else explains better")
                .isEqualTo(BatteryVerdict.UNDETERMINED);
        assertThat(battery(List.of(), Cause.BATTERY_DEFECT, false, false))
                .as("probable alone is no verdict: something must have judged it")
                .isEqualTo(BatteryVerdict.UNDETERMINED);
    }
}
