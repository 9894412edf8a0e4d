package org.voltdocket.dossier.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.voltdocket.assessment.Assessments;
import org.voltdocket.casefile.CaseRef;
import org.voltdocket.casefile.Cases;
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

/** Takes files from the case page: one by one from its script, or all at once from its form. */
@Controller
class UploadPage {

    private final Cases cases;
    private final CasePageModel pages;
    private final Intake intake;
    private final Assessments assessments;

    /**
     * What became of one file.
     *
     * @param item null where it was refused
     * @param refused null where it was not
     * @param findings of the latest assessment that rest on it
     */
    public record Outcome(String fileName, EvidenceItem item, boolean known, Refused refused, List<Finding> findings) {}

    UploadPage(Cases cases, CasePageModel pages, Intake intake, Assessments assessments) {
        this.cases = cases;
        this.pages = pages;
        this.intake = intake;
        this.assessments = assessments;
    }

    @PostMapping("/cases/{number}/evidence")
    String receive(
            Actor actor,
            @PathVariable String number,
            @RequestParam(name = "file", required = false) List<MultipartFile> files,
            @RequestParam(required = false) String note,
            @RequestHeader(name = "X-Requested-With", required = false) String by,
            Model model,
            HttpServletResponse response)
            throws IOException {
        CaseRef ref = cases.requireToFeed(actor, pages.number(number));
        List<Outcome> outcomes = new ArrayList<>();
        for (MultipartFile file : files == null ? List.<MultipartFile>of() : files) {
            if (!file.isEmpty() || !String.valueOf(file.getOriginalFilename()).isEmpty()) {
                outcomes.add(receive(actor, ref, file, note == null || note.isBlank() ? null : note));
            }
        }
        if (outcomes.stream().anyMatch(o -> o.refused() != null)) {
            response.setStatus(HttpServletResponse.SC_UNPROCESSABLE_CONTENT);
        }
        model.addAttribute("ref", ref);
        model.addAttribute("outcomes", outcomes);
        return by == null ? "dossier/received" : "dossier/outcome :: list";
    }

    private Outcome receive(Actor actor, CaseRef ref, MultipartFile file, String note) throws IOException {
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
