package org.voltdocket.returned.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.returned.bench.Line.State;

/** Charge 24 h, rest 24 h, then test: times from memory of EN 50342-1, as {@link Procedure} says. */
class ChecklistTest {

    private static final Instant T0 = Instant.parse("2026-03-04T08:00:00Z");

    private final List<Entry> entries = new ArrayList<>();

    private void note(Step step, Act act, long hours) {
        entries.add(new Entry(step, act, at(hours), "auditor", at(hours), null));
    }

    private static Instant at(long hours) {
        return T0.plus(Duration.ofHours(hours));
    }

    private Line line(Chemistry chemistry, Step step, boolean dangerous, long hours) {
        return Checklist.of(Procedure.of(Optional.ofNullable(chemistry)), entries, dangerous, at(hours)).stream()
                .filter(one -> one.stage().step() == step)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void nothingBeforeSomebodyHasLooked() {
        assertThat(line(Chemistry.FLOODED, Step.LOOK, false, 0).state()).isEqualTo(State.READY);
        Line charge = line(Chemistry.FLOODED, Step.CHARGE, false, 0);
        assertThat(charge.state()).isEqualTo(State.WAITING);
        assertThat(charge.after()).isEqualTo(Step.LOOK);
    }

    @Test
    void theFirstTestMayBeLeftOutAndTheChargeTakesItsTime() {
        note(Step.LOOK, Act.FINISH, 0);
        assertThat(line(Chemistry.FLOODED, Step.CHARGE, false, 0).state()).isEqualTo(State.READY);
        note(Step.CHARGE, Act.START, 1);
        Line running = line(Chemistry.FLOODED, Step.CHARGE, false, 24);
        assertThat(running.state()).isEqualTo(State.RUNNING);
        assertThat(running.mayFinish()).isFalse();
        assertThat(running.from()).isEqualTo(at(25));
        assertThat(line(Chemistry.FLOODED, Step.CHARGE, false, 25).mayFinish()).isTrue();
    }

    @Test
    void restBeginsByItselfAndTheSecondTestSaysWhenItMay() {
        note(Step.LOOK, Act.FINISH, 0);
        note(Step.CHARGE, Act.START, 0);
        note(Step.CHARGE, Act.FINISH, 24);
        Line rest = line(Chemistry.FLOODED, Step.REST, false, 30);
        assertThat(rest.state()).isEqualTo(State.RUNNING);
        assertThat(rest.startedAt()).isEqualTo(at(24));
        Line test = line(Chemistry.FLOODED, Step.SECOND_TEST, false, 30);
        assertThat(test.state()).isEqualTo(State.WAITING);
        assertThat(test.after()).isEqualTo(Step.REST);
        assertThat(test.from()).isEqualTo(at(48));
        assertThat(line(Chemistry.FLOODED, Step.SECOND_TEST, false, 48).state()).isEqualTo(State.READY);
    }

    @Test
    void agmIsChargedInTwoParts() {
        note(Step.LOOK, Act.FINISH, 0);
        note(Step.CHARGE, Act.START, 0);
        note(Step.CHARGE, Act.FINISH, 20);
        assertThat(line(Chemistry.AGM, Step.REST, false, 21).after()).isEqualTo(Step.AFTER_CHARGE);
        note(Step.AFTER_CHARGE, Act.START, 20);
        note(Step.AFTER_CHARGE, Act.FINISH, 24);
        assertThat(line(Chemistry.AGM, Step.REST, false, 25).startedAt()).isEqualTo(at(24));
    }

    @Test
    void aDamagedBatteryIsNeitherChargedNorLoadedAndARunningChargeCanBeBrokenOff() {
        note(Step.LOOK, Act.FINISH, 0);
        note(Step.CHARGE, Act.START, 0);
        note(Step.LOOK, Act.FINISH, 3);
        for (Step step : Step.values()) {
            if (step.loads() && step != Step.AFTER_CHARGE) {
                assertThat(line(Chemistry.FLOODED, step, true, 4).state())
                        .as(step.id())
                        .isEqualTo(State.BLOCKED);
            }
        }
        assertThat(line(Chemistry.FLOODED, Step.CHARGE, true, 4).startedAt()).isEqualTo(T0);
        note(Step.CHARGE, Act.BREAK_OFF, 5);
        assertThat(line(Chemistry.FLOODED, Step.CHARGE, true, 6).startedAt()).isNull();
        assertThat(line(Chemistry.FLOODED, Step.CHARGE, false, 6).state()).isEqualTo(State.READY);
    }

    @Test
    void nobodyChargesWhatHeDoesNotKnow() {
        assertThat(Procedure.of(Optional.empty())).extracting(Stage::step).containsExactly(Step.LOOK, Step.FIRST_TEST);
    }

    /** From memory: flooded 16.00 V 24 h, AGM 14.80 V 20 h, both at no more than 5·I20; 70 Ah: I20 = 3.5 A. */
    @ParameterizedTest
    @CsvSource({"FLOODED, 16.00, 24", "EFB, 16.00, 24", "AGM, 14.80, 20", "GEL, 14.40, 24"})
    void chargeByConstruction(Chemistry chemistry, double volts, long hours) {
        Stage charge = line(chemistry, Step.CHARGE, false, 0).stage();
        assertThat(charge.volts()).isEqualTo(volts);
        assertThat(charge.least()).isEqualTo(Duration.ofHours(hours));
        assertThat(charge.amperes(70.0)).isEqualTo(17.5);
        assertThat(charge.amperes(null)).isNull();
    }
}
