package org.voltdocket.assessment;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
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
import org.voltdocket.kernel.Sha256;

/**
 * Judges a case by any edition, without keeping anything or for good. Each call waits until there is memory for the case,
 * and runs in a transaction of its own.
 */
@Component
public class Reassessor {

    private final CaseService cases;
    private final EvidenceArchive evidence;
    private final DuplicateRecordings fingerprints;
    private final AssessmentRepository rows;
    private final CaseLock lock;
    private final Clock clock;
    private final TransactionTemplate looking;
    private final TransactionTemplate writing;

    Reassessor(
            CaseService cases,
            EvidenceArchive evidence,
            DuplicateRecordings fingerprints,
            AssessmentRepository rows,
            CaseLock lock,
            Clock clock,
            PlatformTransactionManager transactions) {
        this.cases = cases;
        this.evidence = evidence;
        this.fingerprints = fingerprints;
        this.rows = rows;
        this.lock = lock;
        this.clock = clock;
        this.looking = own(transactions);
        this.looking.setReadOnly(true);
        // facts and evidence as they were at one moment, without making anybody wait
        this.looking.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
        this.writing = own(transactions);
    }

    private static TransactionTemplate own(PlatformTransactionManager transactions) {
        TransactionTemplate template = new TransactionTemplate(transactions);
        template.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
        return template;
    }

    /** Judges and keeps nothing. Where the latest assessment rests on the same input and edition, that is the answer. */
    public ReassessmentResult trial(UUID caseId, Rulebook book) {
        return evidence.withRoomFor(
                caseId, () -> looking.execute(tx -> judge(caseId, book).said()));
    }

    /**
     * Judges and appends, unless the latest assessment rests on the same input and edition: so that a run that is done
     * again, as after a crash, appends nothing twice.
     *
     * @param together is handed what was appended, in the transaction that appends it; not called where nothing was
     */
    public ReassessmentResult append(UUID caseId, Rulebook book, Consumer<ReassessmentResult> together) {
        return evidence.withRoomFor(
                caseId,
                () -> writing.execute(tx -> {
                    lock.take(caseId);
                    Work work = judge(caseId, book);
                    if (work.said().keptAt().isPresent()) {
                        return work.said();
                    }
                    Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
                    AssessmentEntity row =
                            new AssessmentEntity(caseId, work.said().after(), book.sha256(), work.input(), now);
                    rows.save(row);
                    cases.noteStanding(caseId, row.standing());
                    together.accept(work.said());
                    return work.said();
                }));
    }

    private record Work(ReassessmentResult said, Sha256 input) {}

    private Work judge(UUID caseId, Rulebook book) {
        CaseFacts file = cases.facts(caseId);
        History history = cases.history(caseId).with(fingerprints.underAnotherSerial(caseId));
        List<EvidenceItem> items = evidence.ofCase(caseId);
        Sha256 input = InputDigest.of(file, history, items);
        Optional<AssessmentEntity> latest = rows.findFirstByCaseIdOrderByOrdinalDesc(caseId);
        Optional<StoredAssessment> kept = latest.map(AssessmentEntity::kept);
        Optional<Assessment> before = kept.map(StoredAssessment::assessment);
        if (latest.filter(row -> row.restsOn(book.sha256(), input)).isPresent()) {
            return new Work(
                    new ReassessmentResult(file.ref(), before, before.get(), kept.map(StoredAssessment::assessedAt)),
                    input);
        }
        Assessment after = Diagnosis.assess(new CaseInput(file.facts(), history, evidence.readings(caseId)), book);
        return new Work(new ReassessmentResult(file.ref(), before, after, Optional.empty()), input);
    }
}
