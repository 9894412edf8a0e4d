package org.voltdocket.dossier.web;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import org.springframework.stereotype.Component;
import org.springframework.web.multipart.MultipartFile;
import org.voltdocket.assessment.Assessments;
import org.voltdocket.casefile.CaseRef;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.Intake;
import org.voltdocket.evidence.Kept;
import org.voltdocket.evidence.Known;
import org.voltdocket.evidence.Received;
import org.voltdocket.evidence.Refused;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;

/** Takes one file of a page into a case. */
@Component
class Uploads {

    private final Intake intake;
    private final Assessments assessments;

    Uploads(Intake intake, Assessments assessments) {
        this.intake = intake;
        this.assessments = assessments;
    }

    /**
     * What became of one file.
     *
     * @param item null where it was refused
     * @param refused null where it was not
     * @param findings of the latest assessment that rest on it
     */
    public record Outcome(String fileName, EvidenceItem item, boolean known, Refused refused, List<Finding> findings) {}

    /** Whether a part of a form carries a file at all; an empty one that has a name does. */
    static boolean isThere(MultipartFile file) {
        return file != null
                && (!file.isEmpty()
                        || !String.valueOf(file.getOriginalFilename()).isEmpty());
    }

    Outcome receive(Actor actor, CaseRef ref, MultipartFile file, String note) throws IOException {
        String name = file.getOriginalFilename();
        try (InputStream content = file.getInputStream()) {
            Received received = intake.accept(actor, ref, new Upload(name, content, note, Origin.WORKSHOP));
            if (received instanceof Refused refused) {
                return new Outcome(name, null, false, refused, List.of());
            }
            boolean known = received instanceof Known;
            EvidenceItem item = received instanceof Known k ? k.item() : ((Kept) received).item();
            return new Outcome(name, item, known, null, assessments.findingsOf(ref.id(), item.id()));
        }
    }
}
