package org.voltdocket.assessment.rerun;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.assessment.edition.Edition;
import org.voltdocket.assessment.edition.EditionBook;
import org.voltdocket.assessment.edition.EditionRefused;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;
import org.voltdocket.trail.Trail;

/** Runs of an edition over the archive. For administrators. */
@Service
public class Reassessments {

    private static final int SAMPLES = 3;
    private static final int RUNS = 50;

    private final RunStore runs;
    private final RunReader reader;
    private final RunTasks tasks;
    private final EditionBook editions;
    private final ClaimedAmounts claimed;
    private final Trail trail;

    Reassessments(
            RunStore runs,
            RunReader reader,
            RunTasks tasks,
            EditionBook editions,
            ClaimedAmounts claimed,
            Trail trail) {
        this.runs = runs;
        this.reader = reader;
        this.tasks = tasks;
        this.editions = editions;
        this.claimed = claimed;
        this.trail = trail;
    }

    /**
     * Asks for a run; it starts within seconds.
     *
     * @param edition its name; null for the one in force
     * @throws EditionRefused if there is none, or a run for good is wanted of one in the making
     */
    @Transactional
    public Run ask(Actor actor, Mode mode, String edition) {
        refuseOthers(actor);
        Edition chosen = edition == null ? editions.inForce() : editions.require(edition);
        if (mode == Mode.FINAL && !chosen.released()) {
            throw EditionRefused.inTheMaking(chosen.name());
        }
        UUID id = runs.ask(mode, chosen.sha256(), actor.user());
        tasks.wake(id);
        record(actor, "reassessment-asked", runs.find(id).orElseThrow());
        return runs.find(id).orElseThrow();
    }

    /**
     * Pauses, resumes or stops a run.
     *
     * @throws RunRefused if there is none, or it stands elsewhere
     */
    @Transactional
    public Run take(Actor actor, UUID id, Step step) {
        refuseOthers(actor);
        Run run = runs.lock(id).orElseThrow(RunRefused::unknown);
        if (!step.follows(run.state())) {
            throw RunRefused.step(run, step);
        }
        runs.move(id, step.to());
        if (step == Step.RESUME) {
            tasks.wake(id);
        }
        record(actor, "reassessment-" + step.id(), run);
        return runs.find(id).orElseThrow();
    }

    /** @throws RunRefused if there is none */
    @Transactional(readOnly = true)
    public Run require(Actor actor, UUID id) {
        refuseOthers(actor);
        return runs.find(id).orElseThrow(RunRefused::unknown);
    }

    /** The latest fifty, newest first. */
    @Transactional(readOnly = true)
    public List<Run> latest(Actor actor) {
        refuseOthers(actor);
        return runs.latest(RUNS);
    }

    /** How far a run is. */
    @Transactional(readOnly = true)
    public Progress progress(Run run) {
        return reader.progress(run);
    }

    /** Changed cases in the order they were opened. */
    @Transactional(readOnly = true)
    public List<Change> changes(Run run, int from, int most) {
        return reader.changes(run.id(), from, most);
    }

    /** Cases that could not be judged, the first so many. */
    @Transactional(readOnly = true)
    public List<FailedCase> failures(Run run, int most) {
        return reader.failures(run.id(), most);
    }

    /** What the run found, in groups. */
    @Transactional(readOnly = true)
    public Findings findings(Run run) {
        List<RunReader.Way> ways = reader.ways(run.id());
        List<UUID> all = ways.stream().flatMap(way -> way.cases().stream()).toList();
        return new Findings(
                ways.stream().map(this::group).toList(),
                reader.rules(run.id()).stream().map(this::group).toList(),
                claimed.of(all));
    }

    private Findings.Group group(RunReader.Way way) {
        List<UUID> samples =
                way.cases().subList(0, Math.min(SAMPLES, way.cases().size()));
        return new Findings.Group(
                way.before(), way.after(), way.cases().size(), claimed.of(way.cases()), List.copyOf(samples));
    }

    private void record(Actor actor, String act, Run run) {
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("mode", run.mode().id());
        details.put("edition", run.edition());
        details.put("sha256", run.sha256().hex());
        trail.record(actor, act, "reassessment/" + run.id(), details);
    }

    private static void refuseOthers(Actor actor) {
        if (actor.role() != Role.ADMIN) {
            throw new AccessDeniedException("runs over the archive are for administrators");
        }
    }
}
