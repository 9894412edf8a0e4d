package org.voltdocket.assessment;

import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.evidence.EvidenceIntake;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;

/** Receives evidence for a case, from a page, a script or the test bench. */
@Service
public class EvidenceUploadService {

    private final EvidenceIntake intake;
    private final PendingAssessmentService assessments;

    EvidenceUploadService(EvidenceIntake intake, PendingAssessmentService assessments) {
        this.intake = intake;
        this.assessments = assessments;
    }

    /**
     * Receives one file. Each step ends its transaction before the next one starts:
     *
     * <ol>
     *   <li>spool, read and store the file, and mark the case as pending assessment;
     *   <li>compare a recording with those of other cases;
     *   <li>assess the case, and the cases with the same recording.
     * </ol>
     *
     * A failed assessment does not lose the file; the case shows the failure. Do not call this inside a transaction.
     *
     * @param file the case, as {@code CaseService.require} returned it for this actor
     * @return as {@link EvidenceIntake#store}
     * @throws org.voltdocket.kernel.RequestException (404) if the actor may not see the case
     */
    public IntakeResult receive(Actor actor, CaseReference file, Upload upload) {
        IntakeResult result = intake.store(actor, file, upload);
        if (!(result instanceof Rejected)) {
            Set<UUID> affected = new TreeSet<>(assessments.compareRecordings(file.id()));
            affected.add(file.id());
            assessments.assessPending(affected);
        }
        return result;
    }
}
