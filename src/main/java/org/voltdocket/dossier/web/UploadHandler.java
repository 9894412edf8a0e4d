package org.voltdocket.dossier.web;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import org.springframework.stereotype.Component;
import org.springframework.web.multipart.MultipartFile;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.read.RejectedFile;
import org.voltdocket.evidence.AlreadyStored;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.evidence.Stored;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;

/** Takes one file of a page into a case. */
@Component
class UploadHandler {

    private final EvidenceUploadService uploads;
    private final AssessmentService assessments;

    UploadHandler(EvidenceUploadService uploads, AssessmentService assessments) {
        this.uploads = uploads;
        this.assessments = assessments;
    }

    /**
     * What became of one file.
     *
     * @param item null where it was refused
     * @param refused null where it was not
     * @param findings of the latest assessment that rest on it
     */
    public record Outcome(
            String fileName, EvidenceItem item, boolean known, RejectedFile refused, List<Finding> findings) {}

    /** Whether a part of a form carries a file at all; an empty one that has a name does. */
    static boolean isThere(MultipartFile file) {
        return file != null
                && (!file.isEmpty()
                        || !String.valueOf(file.getOriginalFilename()).isEmpty());
    }

    Outcome receive(Actor actor, CaseReference ref, MultipartFile file, String note) throws IOException {
        String name = file.getOriginalFilename();
        try (InputStream content = file.getInputStream()) {
            IntakeResult received = uploads.receive(actor, ref, new Upload(name, content, note, Origin.WORKSHOP));
            if (received instanceof Rejected refused) {
                return new Outcome(name, null, false, refused.file(), List.of());
            }
            boolean known = received instanceof AlreadyStored;
            EvidenceItem item = received instanceof AlreadyStored k ? k.item() : ((Stored) received).item();
            return new Outcome(name, item, known, null, assessments.findingsOf(ref.id(), item.id()));
        }
    }
}
