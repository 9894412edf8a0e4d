package org.voltdocket.assessment.rerun;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.assessment.edition.EditionService;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.kernel.Actor;
import org.voltdocket.trail.Trail;

/** Works on a run for a limited time: starts it, processes chunks, and finishes it when none is left. */
@Component
class RunWorker {

    private static final Logger LOG = LoggerFactory.getLogger(RunWorker.class);

    private final RunRepository runs;
    private final ChunkWorker chunks;
    private final RunReader reader;
    private final EditionService editions;
    private final Trail trail;
    private final TransactionTemplate together;

    RunWorker(
            RunRepository runs,
            ChunkWorker chunks,
            RunReader reader,
            EditionService editions,
            Trail trail,
            PlatformTransactionManager transactions) {
        this.runs = runs;
        this.chunks = chunks;
        this.reader = reader;
        this.editions = editions;
        this.trail = trail;
        this.together = new TransactionTemplate(transactions);
    }

    /**
     * @param atMost time limit, so that other runs get a turn
     * @param halt the server stops
     * @return whether there may be more to do
     */
    boolean work(UUID id, Duration atMost, BooleanSupplier halt) {
        ReassessmentRun run = begun(id);
        if (run == null || run.state() != RunState.RUNNING) {
            return false;
        }
        Rulebook book;
        try {
            book = editions.rulebook(run.sha256());
        } catch (IllegalArgumentException e) {
            runs.fail(id, "This server cannot read the edition: " + e.getMessage());
            return false;
        }
        long until = System.nanoTime() + atMost.toNanos();
        while (!halt.getAsBoolean() && System.nanoTime() < until) {
            if (chunks.next(run, book, halt) == ChunkWorker.Outcome.NOTHING_FREE) {
                finish(run);
                return false;
            }
        }
        return true;
    }

    /** The run; the first worker starts it, and the others wait until the chunks exist. */
    private ReassessmentRun begun(UUID id) {
        return together.execute(tx -> {
            ReassessmentRun run = runs.lock(id).orElse(null);
            if (run == null || run.state() != RunState.QUEUED) {
                return run;
            }
            if (run.startedAt().isEmpty()) {
                runs.cut(id);
            }
            runs.move(id, RunState.RUNNING);
            return runs.find(id).orElseThrow();
        });
    }

    private void finish(ReassessmentRun run) {
        together.executeWithoutResult(tx -> {
            if (!runs.finish(run.id())) {
                return;
            }
            RunProgress progress = reader.progress(runs.find(run.id()).orElseThrow());
            Map<String, Object> details = new LinkedHashMap<>();
            details.put("mode", run.mode().id());
            details.put("edition", run.edition());
            details.put("cases", progress.casesRead());
            details.put("changed", progress.casesChanged());
            details.put("failed", progress.casesFailed());
            trail.record(Actor.system(), "reassessment-done", "reassessment/" + run.id(), details);
            LOG.info("A {} run of edition {} is done: {}", run.mode().id(), run.edition(), progress);
        });
    }
}
