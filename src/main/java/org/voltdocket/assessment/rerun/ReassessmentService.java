package org.voltdocket.assessment.rerun;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.assessment.edition.Edition;
import org.voltdocket.assessment.edition.EditionErrors;
import org.voltdocket.assessment.edition.EditionService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.trail.Trail;

/** Runs of an edition over the archive. For administrators. */
@Service
public class ReassessmentService {

    private static final int SAMPLES = 3;
    private static final int RUNS = 50;

    private final RunRepository runs;
    private final RunReader reader;
    private final RunTasks tasks;
    private final EditionService editions;
    private final ClaimedAmounts claimed;
    private final Trail trail;

    ReassessmentService(
            RunRepository runs,
            RunReader reader,
            RunTasks tasks,
            EditionService editions,
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
     * Requests a run; it starts within seconds.
     *
     * @param edition its name; null for the one in force
     * @throws org.voltdocket.kernel.RequestException if there is none, or a final run of a draft is requested
     */
    @Transactional
    public ReassessmentRun ask(Actor actor, RunMode mode, String edition) {
        refuseOthers(actor);
        Edition chosen = edition == null ? editions.inForce() : editions.require(edition);
        if (mode == RunMode.FINAL && !chosen.released()) {
            throw EditionErrors.draft(chosen.name());
        }
        UUID id = runs.ask(mode, chosen.sha256(), actor.user());
        tasks.wake(id);
        record(actor, "reassessment-requested", runs.find(id).orElseThrow());
        return runs.find(id).orElseThrow();
    }

    /**
     * Pauses, resumes or stops a run.
     *
     * @throws org.voltdocket.kernel.RequestException if there is none, or its state does not allow the action
     */
    @Transactional
    public ReassessmentRun take(Actor actor, UUID id, RunAction step) {
        refuseOthers(actor);
        ReassessmentRun run = runs.lock(id).orElseThrow(RunErrors::unknown);
        if (!step.follows(run.state())) {
            throw RunErrors.action(run, step);
        }
        runs.move(id, step.to());
        if (step == RunAction.RESUME) {
            tasks.wake(id);
        }
        record(actor, "reassessment-" + step.id(), run);
        return runs.find(id).orElseThrow();
    }

    /** @throws org.voltdocket.kernel.RequestException if there is none */
    @Transactional(readOnly = true)
    public ReassessmentRun require(Actor actor, UUID id) {
        refuseOthers(actor);
        return runs.find(id).orElseThrow(RunErrors::unknown);
    }

    /** The latest fifty, newest first. */
    @Transactional(readOnly = true)
    public List<ReassessmentRun> latest(Actor actor) {
        refuseOthers(actor);
        return runs.latest(RUNS);
    }

    /** Progress of a run. */
    @Transactional(readOnly = true)
    public RunProgress progress(ReassessmentRun run) {
        return reader.progress(run);
    }

    /** Changed cases in the order they were opened. */
    @Transactional(readOnly = true)
    public List<CaseChange> changes(ReassessmentRun run, int from, int most) {
        return reader.changes(run.id(), from, most);
    }

    /** The first cases that could not be assessed. */
    @Transactional(readOnly = true)
    public List<FailedCase> failures(ReassessmentRun run, int most) {
        return reader.failures(run.id(), most);
    }

    /** The changes of a run, in groups. */
    @Transactional(readOnly = true)
    public RunSummary findings(ReassessmentRun run) {
        List<RunReader.Way> ways = reader.ways(run.id());
        List<UUID> all = ways.stream().flatMap(way -> way.cases().stream()).toList();
        return new RunSummary(
                ways.stream().map(this::group).toList(),
                reader.rules(run.id()).stream().map(this::group).toList(),
                claimed.of(all));
    }

    private RunSummary.Group group(RunReader.Way way) {
        List<UUID> samples =
                way.cases().subList(0, Math.min(SAMPLES, way.cases().size()));
        return new RunSummary.Group(
                way.before(), way.after(), way.cases().size(), claimed.of(way.cases()), List.copyOf(samples));
    }

    private void record(Actor actor, String act, ReassessmentRun run) {
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("mode", run.mode().id());
        details.put("edition", run.edition());
        details.put("sha256", run.sha256().hex());
        trail.record(actor, act, "reassessment/" + run.id(), details);
    }

    private static void refuseOthers(Actor actor) {
        if (!actor.canAdminister()) {
            throw new AccessDeniedException("reassessment runs are for administrators");
        }
    }
}
