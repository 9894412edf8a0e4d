package org.voltdocket.assessment.web;

import java.io.IOException;
import java.util.List;
import org.springframework.stereotype.Component;
import org.springframework.web.multipart.MultipartFile;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.read.RejectedFile;
import org.voltdocket.diagnosis.read.TextCleaner;
import org.voltdocket.evidence.AlreadyStored;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.evidence.Stored;
import org.voltdocket.evidence.web.MultipartUploads;
import org.voltdocket.kernel.Actor;

/** Receives one file of a page and collects what the page shows about it. */
@Component
public class UploadHandler {

    private final EvidenceUploadService uploads;
    private final AssessmentService assessments;

    UploadHandler(EvidenceUploadService uploads, AssessmentService assessments) {
        this.uploads = uploads;
        this.assessments = assessments;
    }

    /**
     * The result of one file.
     *
     * @param item null if it was rejected
     * @param refused null if it was not
     * @param findings findings of the latest assessment that are based on it
     */
    public record Outcome(
            String fileName, EvidenceItem item, boolean known, RejectedFile refused, List<Finding> findings) {}

    public Outcome receive(Actor actor, CaseReference ref, MultipartFile file, String note) throws IOException {
        String name = TextCleaner.fileName(file.getOriginalFilename());
        IntakeResult result =
                MultipartUploads.receive(file, note, Origin.WORKSHOP, upload -> uploads.receive(actor, ref, upload));
        return outcome(name, result);
    }

    /** What a page shows about a file that was received. */
    public Outcome outcome(String name, IntakeResult result) {
        if (result instanceof Rejected rejected) {
            return new Outcome(name, null, false, rejected.file(), List.of());
        }
        boolean known = result instanceof AlreadyStored;
        EvidenceItem item = result instanceof AlreadyStored stored ? stored.item() : ((Stored) result).item();
        return new Outcome(name, item, known, null, assessments.findingsOf(item.caseId(), item.id()));
    }
}
