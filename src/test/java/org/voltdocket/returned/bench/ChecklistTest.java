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
import org.voltdocket.returned.bench.ChecklistItem.State;

/** Charge 24 h, rest 24 h, then test: times from memory of EN 50342-1, as {@link Procedure} says. */
class ChecklistTest {

    private static final Instant T0 = Instant.parse("2026-03-04T08:00:00Z");

    private final List<StepRecord> entries = new ArrayList<>();

    private void note(BenchStep step, StepAction act, long hours) {
        entries.add(new StepRecord(step, act, at(hours), "auditor", at(hours), null));
    }

    private static Instant at(long hours) {
        return T0.plus(Duration.ofHours(hours));
    }

    private ChecklistItem line(Chemistry chemistry, BenchStep step, boolean dangerous, long hours) {
        return Checklist.of(Procedure.of(Optional.ofNullable(chemistry)), entries, dangerous, at(hours)).stream()
                .filter(one -> one.stage().step() == step)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void nothingBeforeSomebodyHasLooked() {
        assertThat(line(Chemistry.FLOODED, BenchStep.LOOK, false, 0).state()).isEqualTo(State.READY);
        ChecklistItem charge = line(Chemistry.FLOODED, BenchStep.CHARGE, false, 0);
        assertThat(charge.state()).isEqualTo(State.WAITING);
        assertThat(charge.after()).isEqualTo(BenchStep.LOOK);
    }

    @Test
    void theFirstTestMayBeLeftOutAndTheChargeTakesItsTime() {
        note(BenchStep.LOOK, StepAction.FINISH, 0);
        assertThat(line(Chemistry.FLOODED, BenchStep.CHARGE, false, 0).state()).isEqualTo(State.READY);
        note(BenchStep.CHARGE, StepAction.START, 1);
        ChecklistItem running = line(Chemistry.FLOODED, BenchStep.CHARGE, false, 24);
        assertThat(running.state()).isEqualTo(State.RUNNING);
        assertThat(running.mayFinish()).isFalse();
        assertThat(running.from()).isEqualTo(at(25));
        assertThat(line(Chemistry.FLOODED, BenchStep.CHARGE, false, 25).mayFinish())
                .isTrue();
    }

    @Test
    void restBeginsByItselfAndTheSecondTestSaysWhenItMay() {
        note(BenchStep.LOOK, StepAction.FINISH, 0);
        note(BenchStep.CHARGE, StepAction.START, 0);
        note(BenchStep.CHARGE, StepAction.FINISH, 24);
        ChecklistItem rest = line(Chemistry.FLOODED, BenchStep.REST, false, 30);
        assertThat(rest.state()).isEqualTo(State.RUNNING);
        assertThat(rest.startedAt()).isEqualTo(at(24));
        ChecklistItem test = line(Chemistry.FLOODED, BenchStep.SECOND_TEST, false, 30);
        assertThat(test.state()).isEqualTo(State.WAITING);
        assertThat(test.after()).isEqualTo(BenchStep.REST);
        assertThat(test.from()).isEqualTo(at(48));
        assertThat(line(Chemistry.FLOODED, BenchStep.SECOND_TEST, false, 48).state())
                .isEqualTo(State.READY);
    }

    @Test
    void agmIsChargedInTwoParts() {
        note(BenchStep.LOOK, StepAction.FINISH, 0);
        note(BenchStep.CHARGE, StepAction.START, 0);
        note(BenchStep.CHARGE, StepAction.FINISH, 20);
        assertThat(line(Chemistry.AGM, BenchStep.REST, false, 21).after()).isEqualTo(BenchStep.AFTER_CHARGE);
        note(BenchStep.AFTER_CHARGE, StepAction.START, 20);
        note(BenchStep.AFTER_CHARGE, StepAction.FINISH, 24);
        assertThat(line(Chemistry.AGM, BenchStep.REST, false, 25).startedAt()).isEqualTo(at(24));
    }

    @Test
    void aDamagedBatteryIsNeitherChargedNorLoadedAndARunningChargeCanBeBrokenOff() {
        note(BenchStep.LOOK, StepAction.FINISH, 0);
        note(BenchStep.CHARGE, StepAction.START, 0);
        note(BenchStep.LOOK, StepAction.FINISH, 3);
        for (BenchStep step : BenchStep.values()) {
            if (step.loads() && step != BenchStep.AFTER_CHARGE) {
                assertThat(line(Chemistry.FLOODED, step, true, 4).state())
                        .as(step.id())
                        .isEqualTo(State.BLOCKED);
            }
        }
        assertThat(line(Chemistry.FLOODED, BenchStep.CHARGE, true, 4).startedAt())
                .isEqualTo(T0);
        note(BenchStep.CHARGE, StepAction.BREAK_OFF, 5);
        assertThat(line(Chemistry.FLOODED, BenchStep.CHARGE, true, 6).startedAt())
                .isNull();
        assertThat(line(Chemistry.FLOODED, BenchStep.CHARGE, false, 6).state()).isEqualTo(State.READY);
    }

    @Test
    void nobodyChargesWhatHeDoesNotKnow() {
        assertThat(Procedure.of(Optional.empty()))
                .extracting(ProcedureStage::step)
                .containsExactly(BenchStep.LOOK, BenchStep.FIRST_TEST);
    }

    /** From memory: flooded 16.00 V 24 h, AGM 14.80 V 20 h, both at no more than 5·I20; 70 Ah: I20 = 3.5 A. */
    @ParameterizedTest
    @CsvSource({"FLOODED, 16.00, 24", "EFB, 16.00, 24", "AGM, 14.80, 20", "GEL, 14.40, 24"})
    void chargeByConstruction(Chemistry chemistry, double volts, long hours) {
        ProcedureStage charge = line(chemistry, BenchStep.CHARGE, false, 0).stage();
        assertThat(charge.volts()).isEqualTo(volts);
        assertThat(charge.least()).isEqualTo(Duration.ofHours(hours));
        assertThat(charge.amperes(70.0)).isEqualTo(17.5);
        assertThat(charge.amperes(null)).isNull();
    }
}
