package org.voltdocket.assessment;

import java.time.Clock;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.CannotCreateTransactionException;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.util.Assert;
import org.voltdocket.casefile.pending.PendingAssessments;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.trail.Trail;

/**
 * Assesses one case. Each method first waits for memory and then starts a transaction of its own, so that a case that waits
 * for memory holds neither a lock nor a connection.
 */
@Component
public class CaseAssessor {

    private static final Logger LOG = LoggerFactory.getLogger(CaseAssessor.class);

    private final CaseInputReader inputs;
    private final AssessmentStore store;
    private final PendingAssessments pending;
    private final Trail trail;
    private final Clock clock;
    private final TransactionTemplate reading;
    private final TransactionTemplate writing;

    CaseAssessor(
            CaseInputReader inputs,
            AssessmentStore store,
            PendingAssessments pending,
            Trail trail,
            Clock clock,
            PlatformTransactionManager transactions) {
        this.inputs = inputs;
        this.store = store;
        this.pending = pending;
        this.trail = trail;
        this.clock = clock;
        this.reading = newTransaction(transactions);
        this.reading.setReadOnly(true);
        // facts and evidence of one moment, without locking the case
        this.reading.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
        this.writing = newTransaction(transactions);
    }

    private static TransactionTemplate newTransaction(PlatformTransactionManager transactions) {
        TransactionTemplate template = new TransactionTemplate(transactions);
        template.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
        return template;
    }

    /**
     * Assesses a case by the edition in force, appends the result if its input or edition is new, and removes the mark of
     * pending cases. A failure is logged, recorded in the trail and shown with the case, never thrown. Without a connection the case
     * stays pending and is assessed some minutes later.
     *
     * @throws IllegalStateException if called inside a transaction, which would hold a second connection
     */
    void assess(UUID caseId, CurrentEdition edition) {
        Assert.state(
                !TransactionSynchronizationManager.isActualTransactionActive(),
                "A case is assessed after the transaction that changed it, not inside.");
        try {
            inputs.withMemoryFor(
                    caseId,
                    () -> writing.execute(tx -> {
                        store.lock(caseId);
                        Optional<Instant> marked = pending.since(caseId);
                        append(caseId, edition.rulebook(), result -> {});
                        marked.ifPresent(since -> pending.clear(caseId, since));
                        return caseId;
                    }));
        } catch (CannotCreateTransactionException | DataAccessResourceFailureException e) {
            LOG.warn("case {} stays pending, because the database is busy or away: {}", caseId, e.toString());
        } catch (RuntimeException | OutOfMemoryError | StackOverflowError e) {
            LOG.error("case {} could not be assessed; its evidence is kept", caseId, e);
            recordFailure(caseId, e);
        }
    }

    /** Assesses without storing. If the latest assessment has the same input and edition, it is the answer. */
    public ReassessmentResult trial(UUID caseId, Rulebook book) {
        return inputs.withMemoryFor(
                caseId, () -> reading.execute(tx -> assess(caseId, book).result()));
    }

    /**
     * Assesses and appends, unless the latest assessment has the same input and edition, so that a repeated run appends
     * nothing twice.
     *
     * @param listener receives what was appended, in the same transaction; not called if nothing was
     */
    public ReassessmentResult reassess(UUID caseId, Rulebook book, Consumer<ReassessmentResult> listener) {
        return inputs.withMemoryFor(
                caseId,
                () -> writing.execute(tx -> {
                    store.lock(caseId);
                    return append(caseId, book, listener);
                }));
    }

    private ReassessmentResult append(UUID caseId, Rulebook book, Consumer<ReassessmentResult> listener) {
        Work work = assess(caseId, book);
        if (work.result().keptAt().isEmpty()) {
            store.append(caseId, work.result().after(), book.sha256(), work.input());
            listener.accept(work.result());
        }
        return work.result();
    }

    private record Work(ReassessmentResult result, Sha256 input) {}

    private Work assess(UUID caseId, Rulebook book) {
        CaseInputReader.Summary summary = inputs.summary(caseId);
        Optional<StoredAssessment> latest = store.latest(caseId).map(AssessmentEntity::stored);
        Optional<Assessment> before = latest.map(StoredAssessment::assessment);
        Optional<StoredAssessment> same = latest.filter(stored -> stored.hasInput(book.sha256(), summary.digest()));
        Assessment after = same.isPresent() ? before.get() : Diagnosis.assess(inputs.input(caseId, summary), book);
        return new Work(
                new ReassessmentResult(summary.ref(), before, after, same.map(StoredAssessment::assessedAt)),
                summary.digest());
    }

    /** What went wrong, in one sentence for the case page. */
    public static String reason(Throwable failure) {
        if (failure instanceof OutOfMemoryError) {
            return "The server ran out of memory during the assessment.";
        }
        return "The assessment failed at " + failure.getClass().getSimpleName()
                + (failure.getMessage() == null ? "" : ": " + failure.getMessage());
    }

    private void recordFailure(UUID caseId, Throwable failure) {
        try {
            writing.executeWithoutResult(tx -> {
                pending.fail(caseId, clock.instant(), reason(failure));
                trail.record(
                        Actor.system(),
                        "assessment-failed",
                        inputs.reference(caseId).number().value(),
                        Map.of("reason", reason(failure)));
            });
        } catch (RuntimeException e) {
            LOG.error("the failure could not be recorded; the case stays pending and is tried at the next start", e);
        }
    }
}
