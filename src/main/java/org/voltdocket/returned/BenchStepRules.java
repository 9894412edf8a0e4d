package org.voltdocket.returned;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.bench.BenchStep;
import org.voltdocket.returned.bench.Checklist;
import org.voltdocket.returned.bench.ChecklistItem;
import org.voltdocket.returned.bench.Procedure;
import org.voltdocket.returned.bench.ProcedureStage;
import org.voltdocket.returned.bench.StepAction;
import org.voltdocket.returned.bench.StepRecord;

/** The checklist of a return, and whether a step may be recorded. */
public final class BenchStepRules {

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern(
                    "d MMM yyyy, HH:mm 'UTC'", Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);

    private BenchStepRules() {}

    /** The procedure of this battery at a given time. */
    public static List<ChecklistItem> checklist(ReturnedBattery battery, Instant at) {
        List<ProcedureStage> stages =
                Procedure.of(Optional.ofNullable(battery.facts().chemistry()));
        return Checklist.of(stages, battery.steps(), dangerous(battery), at);
    }

    /** Whether the latest visual inspection forbids charging and load tests. */
    public static boolean dangerous(ReturnedBattery battery) {
        return battery.condition().filter(BatteryCondition::dangerous).isPresent();
    }

    /**
     * @throws RequestException (400) if the time is in the future or before the previous step
     * @throws RequestException (409) if the procedure does not allow it then
     */
    public static void check(ReturnedBattery battery, BenchStep step, StepAction act, Instant at, Instant now) {
        if (at.isAfter(now)) {
            throw ReturnErrors.invalid("at", "'at' is the time when it was done, now or earlier; read " + at);
        }
        Optional<StepRecord> latest = battery.steps().stream().reduce((a, b) -> a.at().isAfter(b.at()) ? a : b);
        if (latest.isPresent() && at.isBefore(latest.get().at())) {
            throw ReturnErrors.invalid(
                    "at",
                    "'at' is not before the last step noted, '"
                            + latest.get().step().id() + "' of "
                            + MOMENT.format(latest.get().at()) + "; read " + at);
        }
        ChecklistItem line = checklist(battery, at).stream()
                .filter(one -> one.stage().step() == step)
                .findFirst()
                .orElseThrow(() -> notThere(battery, step));
        if (step == BenchStep.LOOK || step == BenchStep.REST) {
            throw ReturnErrors.stepNotAllowed(
                    "'" + step.id() + "' is not ticked off: "
                            + (step == BenchStep.LOOK ? "note the battery's condition instead." : "it runs by itself."),
                    List.of());
        }
        boolean allowed = switch (act) {
            case START ->
                line.state() == ChecklistItem.State.READY && line.stage().timed();
            case FINISH -> line.stage().timed() ? line.mayFinish() : line.state() == ChecklistItem.State.READY;
            case BREAK_OFF -> line.startedAt() != null && line.state() != ChecklistItem.State.DONE;
        };
        if (!allowed) {
            throw refused(battery, line, act);
        }
    }

    private static RequestException notThere(ReturnedBattery battery, BenchStep step) {
        return ReturnErrors.stepNotAllowed(
                battery.facts().chemistry() == null
                        ? "How the battery is built is not known, and the charging voltage depends on it: 16.00 V suits a"
                                + " flooded battery and harms AGM and gel. Note the construction in the case first."
                        : "The procedure of this battery has no step '" + step.id() + "'.",
                List.of());
    }

    private static RequestException refused(ReturnedBattery battery, ChecklistItem line, StepAction act) {
        String step = line.stage().step().id();
        return switch (line.state()) {
            case BLOCKED ->
                ReturnErrors.stepNotAllowed(
                        "Never charge or load-test a battery that is frozen, leaking, cracked or swollen, and "
                                + battery.number()
                                + " was seen so. Nothing was noted: set it apart with care, and conclude"
                                + " without a test.",
                        List.of("condition"));
            case WAITING ->
                ReturnErrors.stepNotAllowed(
                        "'" + step + "' comes after '" + line.after().id() + "'"
                                + (line.from() == null ? "." : ", which ends " + MOMENT.format(line.from()) + "."),
                        List.of(line.after().id()));
            case RUNNING ->
                ReturnErrors.stepNotAllowed(
                        line.from() == null
                                ? "'" + step + "' runs already; finish it or break it off."
                                : "'" + step + "' may be finished from " + MOMENT.format(line.from())
                                        + " on. Break it off if it cannot go on.",
                        List.of());
            case DONE -> ReturnErrors.stepNotAllowed("'" + step + "' is done already.", List.of());
            case READY ->
                ReturnErrors.stepNotAllowed(
                        line.stage().timed() && act == StepAction.FINISH
                                ? "'" + step + "' takes " + line.stage().least().toHours() + " h and was not started."
                                : act == StepAction.BREAK_OFF
                                        ? "'" + step + "' was not started."
                                        : "'" + step + "' is finished at once: it takes no time of its own.",
                        List.of());
        };
    }
}
