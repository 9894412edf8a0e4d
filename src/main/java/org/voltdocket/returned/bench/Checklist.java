package org.voltdocket.returned.bench;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The state of the bench procedure of one battery at one time. */
public final class Checklist {

    private final List<ProcedureStage> stages;
    private final List<StepRecord> entries;
    private final boolean dangerous;
    private final Instant now;
    private final List<ChecklistItem> lines = new ArrayList<>();

    private Checklist(List<ProcedureStage> stages, List<StepRecord> entries, boolean dangerous, Instant now) {
        this.stages = stages;
        this.entries = entries;
        this.dangerous = dangerous;
        this.now = now;
    }

    /**
     * @param stages of the battery's procedure
     * @param entries in the order recorded
     * @param dangerous whether it must be neither charged nor loaded
     */
    public static List<ChecklistItem> of(
            List<ProcedureStage> stages, List<StepRecord> entries, boolean dangerous, Instant now) {
        Checklist list = new Checklist(stages, entries, dangerous, now);
        stages.forEach(stage -> list.lines.add(list.line(stage)));
        return List.copyOf(list.lines);
    }

    private ChecklistItem line(ProcedureStage stage) {
        Optional<StepRecord> done = last(stage.step(), StepAction.FINISH);
        if (done.isPresent()) {
            Optional<StepRecord> started = last(stage.step(), StepAction.START);
            return new ChecklistItem(
                    stage,
                    ChecklistItem.State.DONE,
                    started.map(StepRecord::at).orElse(null),
                    started.map(StepRecord::by).orElse(null),
                    done.get().at(),
                    done.get().by(),
                    null,
                    null);
        }
        Optional<ChecklistItem> first = obstacle(stage);
        if (dangerous && stage.step().loads()) {
            Optional<StepRecord> started = last(stage.step(), StepAction.START);
            return new ChecklistItem(
                    stage,
                    ChecklistItem.State.BLOCKED,
                    started.map(StepRecord::at).orElse(null),
                    started.map(StepRecord::by).orElse(null),
                    null,
                    null,
                    null,
                    null);
        }
        if (first.isPresent()) {
            return blank(
                    stage,
                    ChecklistItem.State.WAITING,
                    first.get().from(),
                    first.get().stage().step());
        }
        if (stage.step() == BenchStep.REST) {
            return rest(stage);
        }
        return running(stage).orElse(blank(stage, ChecklistItem.State.READY, null, null));
    }

    /** A rest starts by itself when the previous step ends. */
    private ChecklistItem rest(ProcedureStage stage) {
        Instant since = lines.get(lines.size() - 1).doneAt();
        Instant over = since.plus(stage.least());
        return over.isAfter(now)
                ? new ChecklistItem(stage, ChecklistItem.State.RUNNING, since, null, null, null, over, null)
                : new ChecklistItem(stage, ChecklistItem.State.DONE, since, null, over, null, null, null);
    }

    private Optional<ChecklistItem> running(ProcedureStage stage) {
        return last(stage.step(), StepAction.START).map(start -> {
            Instant over = start.at().plus(stage.least());
            return new ChecklistItem(
                    stage,
                    ChecklistItem.State.RUNNING,
                    start.at(),
                    start.by(),
                    null,
                    null,
                    over.isAfter(now) ? over : null,
                    null);
        });
    }

    /** The nearest earlier step that must be done first and is not done. */
    private Optional<ChecklistItem> obstacle(ProcedureStage stage) {
        for (int i = lines.size() - 1; i >= 0; i--) {
            ChecklistItem before = lines.get(i);
            boolean needed = !before.stage().optional()
                    || stage.step() == BenchStep.RECHARGE && before.stage().step() == BenchStep.CAPACITY;
            if (needed && before.state() != ChecklistItem.State.DONE) {
                return Optional.of(before);
            }
        }
        return Optional.empty();
    }

    /** The latest entry of this kind, unless the step was aborted or restarted since. */
    private Optional<StepRecord> last(BenchStep step, StepAction act) {
        StepRecord found = null;
        for (StepRecord entry : entries) {
            if (entry.step() == step) {
                boolean same = entry.act() == act;
                boolean keeps = act == StepAction.START && entry.act() == StepAction.FINISH;
                found = same ? entry : keeps ? found : null;
            }
        }
        return Optional.ofNullable(found);
    }

    private static ChecklistItem blank(ProcedureStage stage, ChecklistItem.State state, Instant from, BenchStep after) {
        return new ChecklistItem(stage, state, null, null, null, null, from, after);
    }
}
