package org.voltdocket.assessment;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** The assessments in PostgreSQL. */
@Service
class DefaultAssessmentService implements AssessmentService {

    private final AssessmentRepository rows;
    private final PendingAssessments due;
    private final CaseAssessor assessor;
    private final CaseService cases;

    DefaultAssessmentService(
            AssessmentRepository rows, PendingAssessments due, CaseAssessor assessor, CaseService cases) {
        this.rows = rows;
        this.due = due;
        this.assessor = assessor;
        this.cases = cases;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<StoredAssessment> latest(UUID caseId) {
        return rows.findFirstByCaseIdOrderByOrdinalDesc(caseId).map(AssessmentEntity::kept);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<StoredAssessment> kept(UUID assessmentId) {
        return rows.findById(assessmentId).map(AssessmentEntity::kept);
    }

    @Override
    @Transactional(readOnly = true)
    public List<StoredAssessment> all(UUID caseId) {
        return rows.findByCaseIdOrderByOrdinalDesc(caseId).stream()
                .map(AssessmentEntity::kept)
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<AssessmentFailure> failure(UUID caseId) {
        return due.failure(caseId);
    }

    @Override
    @Transactional(readOnly = true)
    public boolean upToDate(UUID caseId) {
        return due.since(caseId).isEmpty();
    }

    @Override
    public List<Assessment.Finding> findingsOf(UUID caseId, UUID evidenceId) {
        String id = evidenceId.toString();
        return latest(caseId)
                .map(kept -> kept.assessment().findings().stream()
                        .filter(finding -> id.equals(finding.evidence()))
                        .toList())
                .orElse(List.of());
    }

    @Override
    public List<Assessment.RegimeSpan> regimesOf(UUID caseId, UUID evidenceId) {
        return latest(caseId)
                .map(kept -> kept.assessment().regimes().getOrDefault(evidenceId.toString(), List.of()))
                .orElse(List.of());
    }

    @Override
    public void judgeAgain(Actor actor, CaseNumber number) {
        assessor.assessWithRoom(cases.require(actor, number).id());
    }
}
