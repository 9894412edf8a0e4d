package org.voltdocket.assessment;

import java.time.Duration;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.retry.RetryException;
import org.springframework.core.retry.RetryPolicy;
import org.springframework.core.retry.RetryTemplate;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.stereotype.Service;
import org.voltdocket.access.rows.SeesAllRows;
import org.voltdocket.casefile.pending.PendingAssessments;
import org.voltdocket.evidence.DuplicateRecordings;

/** Compares new recordings and assesses pending cases, after the transactions that changed them. */
@Service
class PendingAssessmentService {

    private static final Logger LOG = LoggerFactory.getLogger(PendingAssessmentService.class);

    /** The database cancels one of two transactions that lock the same cases in different order. */
    private final RetryTemplate retry = new RetryTemplate(RetryPolicy.builder()
            .maxRetries(2)
            .delay(Duration.ofMillis(20))
            .includes(ConcurrencyFailureException.class)
            .build());

    private final PendingAssessments pending;
    private final DuplicateRecordings duplicates;
    private final CaseAssessor assessor;
    private final CurrentEdition edition;

    PendingAssessmentService(
            PendingAssessments pending, DuplicateRecordings duplicates, CaseAssessor assessor, CurrentEdition edition) {
        this.pending = pending;
        this.duplicates = duplicates;
        this.assessor = assessor;
        this.edition = edition;
    }

    /**
     * Compares the new recordings of a case with those of other cases. If that fails, it is tried again at the next start.
     *
     * @return the cases that a new match made pending
     */
    @SeesAllRows
    Set<UUID> compareRecordings(UUID caseId) {
        try {
            return retry.execute(() -> duplicates.compare(caseId));
        } catch (RetryException e) {
            LOG.error("recordings of case {} could not be compared; tried again at the next start", caseId, e);
            return Set.of();
        }
    }

    /** Assesses a case by the edition in force; never throws. */
    @SeesAllRows
    void assess(UUID caseId) {
        assessor.assess(caseId, edition);
    }

    /** Assesses those of the cases that are pending. A case that another thread assesses is waited for. */
    @SeesAllRows
    void assessPending(Collection<UUID> caseIds) {
        caseIds.stream().filter(this::isPending).forEach(this::assess);
    }

    /** False also where it cannot be told; then the case is assessed some minutes later. */
    private boolean isPending(UUID caseId) {
        try {
            return pending.since(caseId).isPresent();
        } catch (DataAccessResourceFailureException e) {
            LOG.warn("case {} stays pending, because the database is busy or away: {}", caseId, e.toString());
            return false;
        }
    }

    /** Does what a crash left undone, and retries what failed. */
    void resume() {
        List.copyOf(duplicates.casesToCompare()).forEach(this::compareRecordings);
        pending.all().forEach(this::assess);
    }

    /** Assesses what a node left that crashed or lost its database; the other nodes need no restart. */
    void assessAbandoned() {
        pending.abandoned().forEach(this::assess);
    }
}
