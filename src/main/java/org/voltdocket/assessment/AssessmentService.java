package org.voltdocket.assessment;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.pending.AssessmentFailure;
import org.voltdocket.casefile.pending.PendingAssessments;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** The stored assessments of cases. Callers check first that the user may see the case. */
@Service
public class AssessmentService {

    private final AssessmentRepository rows;
    private final PendingAssessments pending;
    private final PendingAssessmentService assessor;
    private final CaseService cases;

    AssessmentService(
            AssessmentRepository rows,
            PendingAssessments pending,
            PendingAssessmentService assessor,
            CaseService cases) {
        this.rows = rows;
        this.pending = pending;
        this.assessor = assessor;
        this.cases = cases;
    }

    /** The latest assessment of a case; empty until the first. */
    @Transactional(readOnly = true)
    public Optional<StoredAssessment> latest(UUID caseId) {
        return rows.findFirstByCaseIdOrderByOrdinalDesc(caseId).map(AssessmentEntity::stored);
    }

    /** One assessment, whether or not it is the latest of its case. */
    @Transactional(readOnly = true)
    public Optional<StoredAssessment> stored(UUID assessmentId) {
        return rows.findById(assessmentId).map(AssessmentEntity::stored);
    }

    /** Every assessment of a case, newest first. */
    @Transactional(readOnly = true)
    public List<StoredAssessment> all(UUID caseId) {
        return rows.findByCaseIdOrderByOrdinalDesc(caseId).stream()
                .map(AssessmentEntity::stored)
                .toList();
    }

    /** Why the case could not be assessed since its last change; empty if it was. */
    @Transactional(readOnly = true)
    public Optional<AssessmentFailure> failure(UUID caseId) {
        return pending.failure(caseId);
    }

    /** Since when a change of the case waits for its assessment; empty if the latest assessment covers everything. */
    @Transactional(readOnly = true)
    public Optional<Instant> pendingSince(UUID caseId) {
        return pending.since(caseId);
    }

    /** Whether the latest assessment covers the latest change of the case. */
    @Transactional(readOnly = true)
    public boolean upToDate(UUID caseId) {
        return pending.since(caseId).isEmpty();
    }

    /** Findings of the latest assessment that are based on this item of evidence. */
    public List<Assessment.Finding> findingsOf(UUID caseId, UUID evidenceId) {
        String id = evidenceId.toString();
        return latest(caseId)
                .map(stored -> stored.assessment().findings().stream()
                        .filter(finding -> id.equals(finding.evidence()))
                        .toList())
                .orElse(List.of());
    }

    /** Regimes of this recording in the latest assessment; empty for other kinds. */
    public List<Assessment.RegimeSpan> regimesOf(UUID caseId, UUID evidenceId) {
        return latest(caseId)
                .map(stored -> stored.assessment().regimes().getOrDefault(evidenceId.toString(), List.of()))
                .orElse(List.of());
    }

    /**
     * Assesses a case again, for example after a failure. Appends nothing if the input is the same as before.
     *
     * @throws org.voltdocket.kernel.RequestException (404) if there is no such case for this actor
     */
    public void reassess(Actor actor, CaseNumber number) {
        assessor.assess(cases.require(actor, number).id());
    }
}
