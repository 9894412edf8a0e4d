package org.voltdocket.assessment;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Diagnosis;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.evidence.DuplicateRecordings;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.trail.Trail;

/** Runs the judge over one case, in a transaction of its own and under the case's lock. */
@Component
class CaseAssessor {

    private static final Logger LOG = LoggerFactory.getLogger(CaseAssessor.class);

    private final CaseService cases;
    private final EvidenceArchive evidence;
    private final DuplicateRecordings fingerprints;
    private final AssessmentRepository rows;
    private final PendingAssessments due;
    private final CurrentEdition inForce;
    private final Trail trail;
    private final CaseLock lock;
    private final Clock clock;
    private final TransactionTemplate ownTransaction;

    CaseAssessor(
            CaseService cases,
            EvidenceArchive evidence,
            DuplicateRecordings fingerprints,
            AssessmentRepository rows,
            PendingAssessments due,
            CurrentEdition inForce,
            Trail trail,
            CaseLock lock,
            Clock clock,
            PlatformTransactionManager transactions) {
        this.cases = cases;
        this.evidence = evidence;
        this.fingerprints = fingerprints;
        this.rows = rows;
        this.due = due;
        this.inForce = inForce;
        this.trail = trail;
        this.lock = lock;
        this.clock = clock;
        this.ownTransaction = new TransactionTemplate(transactions);
        this.ownTransaction.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
    }

    /** Assesses; a failure is logged, kept in the trail and shown with the case, never thrown. */
    void assess(UUID caseId) {
        try {
            ownTransaction.executeWithoutResult(tx -> judge(caseId));
        } catch (RuntimeException | OutOfMemoryError | StackOverflowError e) {
            LOG.error("case {} could not be assessed; its evidence is kept", caseId, e);
            noteFailure(caseId, e);
        }
    }

    /** As {@link #assess}, for callers that have no memory for the case's recordings yet. */
    void assessWithRoom(UUID caseId) {
        evidence.withRoomFor(caseId, () -> {
            assess(caseId);
            return null;
        });
    }

    private void judge(UUID caseId) {
        lock.take(caseId);
        Optional<Instant> since = due.since(caseId);
        CaseFacts file = cases.facts(caseId);
        History history = cases.history(caseId).with(fingerprints.underAnotherSerial(caseId));
        List<EvidenceItem> items = evidence.ofCase(caseId);
        Sha256 input = InputDigest.of(file, history, items);
        Rulebook book = inForce.rulebook();
        boolean known = rows.findFirstByCaseIdOrderByOrdinalDesc(caseId)
                .filter(latest -> latest.restsOn(book.sha256(), input))
                .isPresent();
        if (!known) {
            append(caseId, new CaseInput(file.facts(), history, evidence.readings(caseId)), book, input);
        }
        since.ifPresent(at -> due.done(caseId, at));
    }

    private void append(UUID caseId, CaseInput input, Rulebook book, Sha256 digest) {
        Assessment assessment = Diagnosis.assess(input, book);
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        AssessmentEntity row = new AssessmentEntity(caseId, assessment, book.sha256(), digest, now);
        rows.save(row);
        cases.noteStanding(caseId, row.standing());
    }

    private void noteFailure(UUID caseId, Throwable failure) {
        String reason = failure instanceof OutOfMemoryError
                ? "The server ran out of memory while judging."
                : "The judge stopped at " + failure.getClass().getSimpleName()
                        + (failure.getMessage() == null ? "" : ": " + failure.getMessage());
        try {
            ownTransaction.executeWithoutResult(tx -> {
                due.failed(caseId, clock.instant(), reason);
                trail.record(
                        Actor.system(),
                        "assessment-failed",
                        cases.facts(caseId).ref().number().value(),
                        Map.of("reason", reason));
            });
        } catch (RuntimeException e) {
            LOG.error("nor could that be noted; the case stays due and is tried at the next start", e);
        }
    }
}
