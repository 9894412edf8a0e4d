package org.voltdocket.dossier.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.dossier.ReadingFields;
import org.voltdocket.dossier.display.AssessmentDisplay;
import org.voltdocket.dossier.display.RecordingSummary;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** The page of one evidence item. Series and original bytes are served by package {@code evidence}. */
@Controller
class EvidencePageController {

    private final EvidenceArchive archive;
    private final AssessmentService assessments;
    private final CaseService cases;
    private final CasePageModel pages;

    EvidencePageController(
            EvidenceArchive archive, AssessmentService assessments, CaseService cases, CasePageModel pages) {
        this.archive = archive;
        this.assessments = assessments;
        this.cases = cases;
        this.pages = pages;
    }

    @GetMapping("/evidence/{id}")
    String show(Actor actor, @PathVariable UUID id, Model model) {
        EvidenceItem item = archive.item(actor, id);
        Assessment assessment = assessments
                .latest(item.caseId())
                .map(StoredAssessment::assessment)
                .orElse(null);
        Reading reading = archive.reading(id).orElse(null);
        model.addAttribute("item", item);
        model.addAttribute("ref", cases.require(actor, item.caseId()));
        model.addAttribute("members", reading == null ? Map.of() : ReadingFields.of(reading));
        model.addAttribute(
                "findings", AssessmentDisplay.findings(assessments.findingsOf(item.caseId(), id), List.of(item)));
        if (item.isRecording()) {
            model.addAttribute("rec", pages.recording(actor, item, assessment));
            model.addAttribute("summary", reading instanceof Recording r ? RecordingSummary.of(r) : null);
        }
        return "dossier/evidence";
    }

    /** The summary table alone, which the case page loads on demand. */
    @GetMapping("/evidence/{id}/summary")
    String summary(Actor actor, @PathVariable UUID id, Model model) {
        archive.item(actor, id);
        if (!(archive.reading(id).orElse(null) instanceof Recording recording)) {
            throw RequestException.notFound("recording " + id);
        }
        model.addAttribute("summary", RecordingSummary.of(recording));
        return "dossier/summary";
    }
}
