package org.voltdocket.assessment.rerun;

import java.util.UUID;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.dao.RecoverableDataAccessException;
import org.springframework.dao.TransientDataAccessException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionException;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.assessment.CaseAssessor;
import org.voltdocket.assessment.ReassessmentResult;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** Assesses the cases of one chunk in transactions of their own, while the row of the chunk is locked. */
@Component
class ChunkWorker {

    private static final Logger LOG = LoggerFactory.getLogger(ChunkWorker.class);

    private final ChunkRepository chunks;
    private final RunRepository runs;
    private final CaseAssessor assessor;
    private final TransactionTemplate together;

    ChunkWorker(
            ChunkRepository chunks,
            RunRepository runs,
            CaseAssessor assessor,
            PlatformTransactionManager transactions) {
        this.chunks = chunks;
        this.runs = runs;
        this.assessor = assessor;
        this.together = new TransactionTemplate(transactions);
    }

    /** The result of one call. */
    enum Outcome {
        DONE,
        /** No chunk is free, or the run is not running. */
        NOTHING_FREE,
        /** The server stops; the chunk is given back. */
        HALTED
    }

    /**
     * Claims a chunk and assesses its cases.
     *
     * @param halt asked between two cases
     */
    Outcome next(ReassessmentRun run, Rulebook book, BooleanSupplier halt) {
        return together.execute(tx -> {
            boolean running = runs.find(run.id())
                    .filter(now -> now.state() == RunState.RUNNING)
                    .isPresent();
            ChunkRepository.Chunk chunk = running ? chunks.claim(run.id()).orElse(null) : null;
            if (chunk == null) {
                return Outcome.NOTHING_FREE;
            }
            long start = System.nanoTime();
            for (UUID caseId : chunk.cases()) {
                if (halt.getAsBoolean()) {
                    tx.setRollbackOnly();
                    return Outcome.HALTED;
                }
                judge(run, book, caseId);
            }
            chunks.done(run.id(), chunk, (System.nanoTime() - start) / 1e9);
            return Outcome.DONE;
        });
    }

    private void judge(ReassessmentRun run, Rulebook book, UUID caseId) {
        Consumer<ReassessmentResult> note = said -> note(run.id(), caseId, said);
        try {
            if (run.mode() == RunMode.FINAL) {
                assessor.reassess(caseId, book, note);
            } else {
                note.accept(assessor.trial(caseId, book));
            }
        } catch (RuntimeException | OutOfMemoryError | StackOverflowError e) {
            if (databaseIsGone(e)) {
                throw (RuntimeException) e; // the chunk is done again, once it is back
            }
            LOG.error("case {} could not be reassessed", caseId, e);
            chunks.failed(run.id(), caseId, CaseAssessor.reason(e));
        }
    }

    private void note(UUID run, UUID caseId, ReassessmentResult said) {
        if (AssessmentDifference.counts(said)) {
            chunks.changed(
                    run,
                    caseId,
                    said.before().map(ChunkWorker::verdict).orElse(new String[2]),
                    verdict(said.after()),
                    AssessmentDifference.between(said.before(), said.after()));
        }
    }

    private static String[] verdict(Assessment assessment) {
        return new String[] {
            assessment.leaning().id(), assessment.causes().get(0).cause().id()
        };
    }

    private static boolean databaseIsGone(Throwable e) {
        return e instanceof DataAccessResourceFailureException
                || e instanceof TransientDataAccessException
                || e instanceof RecoverableDataAccessException
                || e instanceof TransactionException;
    }
}
