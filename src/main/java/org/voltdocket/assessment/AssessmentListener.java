package org.voltdocket.assessment;

import java.time.Duration;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.retry.RetryException;
import org.springframework.core.retry.RetryPolicy;
import org.springframework.core.retry.RetryTemplate;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.event.TransactionPhase;
import org.springframework.transaction.event.TransactionalEventListener;
import org.voltdocket.casefile.CaseOpenedEvent;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.FactsChangedEvent;
import org.voltdocket.evidence.DuplicateRecordingFoundEvent;
import org.voltdocket.evidence.DuplicateRecordings;
import org.voltdocket.evidence.EvidenceStoredEvent;

/**
 * Hears the news of the rooms below. Inside their transaction a case is noted as due; after it, and before the caller
 * goes on, it is assessed. A new case is history to those of the same battery or vehicle, so they are judged anew too.
 *
 * <p>The assessment starts when the caller's connection is given back; see {@link Afterwards}.
 */
@Component
class AssessmentListener {

    private static final Logger LOG = LoggerFactory.getLogger(AssessmentListener.class);

    /** Two who note the same cases in another order may be told to begin anew by the database. */
    private final RetryTemplate again = new RetryTemplate(RetryPolicy.builder()
            .maxRetries(2)
            .delay(Duration.ofMillis(20))
            .includes(ConcurrencyFailureException.class)
            .build());

    private final PendingAssessments due;
    private final CaseAssessor assessor;
    private final CaseService cases;
    private final DuplicateRecordings fingerprints;

    AssessmentListener(
            PendingAssessments due, CaseAssessor assessor, CaseService cases, DuplicateRecordings fingerprints) {
        this.due = due;
        this.assessor = assessor;
        this.cases = cases;
        this.fingerprints = fingerprints;
    }

    @EventListener
    void note(CaseOpenedEvent news) {
        due.note(news.caseId());
        cases.siblings(news.caseId()).forEach(due::note);
    }

    @EventListener
    void note(FactsChangedEvent news) {
        due.note(news.caseId());
    }

    @EventListener
    void note(EvidenceStoredEvent news) {
        due.note(news.caseId());
    }

    @TransactionalEventListener(phase = TransactionPhase.AFTER_COMMIT)
    void assess(CaseOpenedEvent news) {
        Afterwards.run(() -> {
            assessor.assess(news.caseId());
            cases.siblings(news.caseId()).forEach(assessor::assessWithRoom);
        });
    }

    @TransactionalEventListener(phase = TransactionPhase.AFTER_COMMIT)
    void assess(FactsChangedEvent news) {
        Afterwards.run(() -> assessor.assessWithRoom(news.caseId()));
    }

    @TransactionalEventListener(phase = TransactionPhase.AFTER_COMMIT)
    void assess(EvidenceStoredEvent news) {
        Afterwards.run(() -> {
            compare(news.caseId());
            assessor.assess(news.caseId());
        });
    }

    /** Two cases can become contradictory at once: either upload, whichever comes last, has both judged. */
    @EventListener
    void note(DuplicateRecordingFoundEvent news) {
        due.note(news.caseId());
    }

    @TransactionalEventListener(phase = TransactionPhase.AFTER_COMMIT)
    void assess(DuplicateRecordingFoundEvent news) {
        // without room of its own: the upload that brought this still holds some, and must not wait for more
        Afterwards.run(() -> assessor.assess(news.caseId()));
    }

    private void compare(UUID caseId) {
        try {
            again.execute(() -> {
                fingerprints.compare(caseId);
                return caseId;
            });
        } catch (RetryException e) {
            LOG.error("recordings of case {} could not be compared; tried again at the next start", caseId, e);
        }
    }

    /** What a crash left between a change and its assessment, or what failed, is tried when the server starts. */
    @EventListener
    void assessLeftBehind(ApplicationReadyEvent started) {
        fingerprints.casesToCompare().forEach(this::compare);
        due.all().forEach(assessor::assessWithRoom);
    }

    /** What another node left behind when it died, or when the database was away, waits for no restart. */
    void assessLongDue() {
        due.leftBehind().forEach(assessor::assessWithRoom);
    }
}
