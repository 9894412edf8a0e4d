package org.voltdocket.dossier.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.voltdocket.assessment.web.UploadHandler;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.evidence.web.MultipartUploads;
import org.voltdocket.kernel.Actor;

/** Receives files from the case page: one by one from its script, or all at once from its form. */
@Controller
class UploadPageController {

    private final CaseService cases;
    private final CasePageModel pages;
    private final UploadHandler uploads;

    UploadPageController(CaseService cases, CasePageModel pages, UploadHandler uploads) {
        this.cases = cases;
        this.pages = pages;
        this.uploads = uploads;
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
        CaseReference ref = cases.requireToFeed(actor, pages.number(number));
        List<UploadHandler.Outcome> outcomes = new ArrayList<>();
        for (MultipartFile file : MultipartUploads.present(files)) {
            outcomes.add(uploads.receive(actor, ref, file, note));
        }
        if (outcomes.stream().anyMatch(o -> o.refused() != null)) {
            response.setStatus(HttpServletResponse.SC_UNPROCESSABLE_CONTENT);
        }
        model.addAttribute("ref", ref);
        model.addAttribute("outcomes", outcomes);
        return by == null ? "dossier/received" : "dossier/outcome :: list";
    }
}
