package org.voltdocket.returned.bench;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The procedure of one battery at one moment: what is done, what may be done, and when the next may begin. */
public final class Checklist {

    private final List<Stage> stages;
    private final List<Entry> entries;
    private final boolean dangerous;
    private final Instant now;
    private final List<Line> lines = new ArrayList<>();

    private Checklist(List<Stage> stages, List<Entry> entries, boolean dangerous, Instant now) {
        this.stages = stages;
        this.entries = entries;
        this.dangerous = dangerous;
        this.now = now;
    }

    /**
     * @param stages of the battery's procedure
     * @param entries in the order noted
     * @param dangerous whether it must be neither charged nor loaded
     */
    public static List<Line> of(List<Stage> stages, List<Entry> entries, boolean dangerous, Instant now) {
        Checklist list = new Checklist(stages, entries, dangerous, now);
        stages.forEach(stage -> list.lines.add(list.line(stage)));
        return List.copyOf(list.lines);
    }

    private Line line(Stage stage) {
        Optional<Entry> done = last(stage.step(), Act.FINISH);
        if (done.isPresent()) {
            Optional<Entry> started = last(stage.step(), Act.START);
            return new Line(
                    stage,
                    Line.State.DONE,
                    started.map(Entry::at).orElse(null),
                    started.map(Entry::by).orElse(null),
                    done.get().at(),
                    done.get().by(),
                    null,
                    null);
        }
        Optional<Line> first = obstacle(stage);
        if (dangerous && stage.step().loads()) {
            Optional<Entry> started = last(stage.step(), Act.START);
            return new Line(
                    stage,
                    Line.State.BLOCKED,
                    started.map(Entry::at).orElse(null),
                    started.map(Entry::by).orElse(null),
                    null,
                    null,
                    null,
                    null);
        }
        if (first.isPresent()) {
            return blank(
                    stage,
                    Line.State.WAITING,
                    first.get().from(),
                    first.get().stage().step());
        }
        if (stage.step() == Step.REST) {
            return rest(stage);
        }
        return running(stage).orElse(blank(stage, Line.State.READY, null, null));
    }

    /** Nobody starts a rest: it runs from the end of what came before it. */
    private Line rest(Stage stage) {
        Instant since = lines.get(lines.size() - 1).doneAt();
        Instant over = since.plus(stage.least());
        return over.isAfter(now)
                ? new Line(stage, Line.State.RUNNING, since, null, null, null, over, null)
                : new Line(stage, Line.State.DONE, since, null, over, null, null, null);
    }

    private Optional<Line> running(Stage stage) {
        return last(stage.step(), Act.START).map(start -> {
            Instant over = start.at().plus(stage.least());
            return new Line(
                    stage,
                    Line.State.RUNNING,
                    start.at(),
                    start.by(),
                    null,
                    null,
                    over.isAfter(now) ? over : null,
                    null);
        });
    }

    /** The nearest step before this one that has to be done first and is not. */
    private Optional<Line> obstacle(Stage stage) {
        for (int i = lines.size() - 1; i >= 0; i--) {
            Line before = lines.get(i);
            boolean needed = !before.stage().optional()
                    || stage.step() == Step.RECHARGE && before.stage().step() == Step.CAPACITY;
            if (needed && before.state() != Line.State.DONE) {
                return Optional.of(before);
            }
        }
        return Optional.empty();
    }

    /** The last entry of this kind, unless the step was broken off or begun anew since. */
    private Optional<Entry> last(Step step, Act act) {
        Entry found = null;
        for (Entry entry : entries) {
            if (entry.step() == step) {
                boolean same = entry.act() == act;
                boolean keeps = act == Act.START && entry.act() == Act.FINISH;
                found = same ? entry : keeps ? found : null;
            }
        }
        return Optional.ofNullable(found);
    }

    private static Line blank(Stage stage, Line.State state, Instant from, Step after) {
        return new Line(stage, state, null, null, null, null, from, after);
    }
}
