package org.voltdocket.assessment;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** The assessments of the cases. Callers have asked {@code Cases} first whether the case may be seen. */
public interface AssessmentService {

    /** The latest assessment of a case; empty until the first. */
    Optional<StoredAssessment> latest(UUID caseId);

    /** One assessment, whether or not it is the latest of its case. */
    Optional<StoredAssessment> kept(UUID assessmentId);

    /** Every assessment of a case, newest first. */
    List<StoredAssessment> all(UUID caseId);

    /** Why the case could not be assessed since its last change; empty where it was. */
    Optional<AssessmentFailure> failure(UUID caseId);

    /** Whether the latest assessment takes all into account that the case holds. */
    boolean upToDate(UUID caseId);

    /** Findings of the latest assessment that rest on this item of evidence. */
    List<Assessment.Finding> findingsOf(UUID caseId, UUID evidenceId);

    /** Regimes that the latest assessment sees in this recording; empty for other kinds. */
    List<Assessment.RegimeSpan> regimesOf(UUID caseId, UUID evidenceId);

    /**
     * Assesses a case anew, as a clerk asks after a failure. Appends nothing where the input is the same as before.
     *
     * @throws org.voltdocket.casefile.NotFoundException if there is no such case for this actor
     */
    void judgeAgain(Actor actor, CaseNumber number);
}
