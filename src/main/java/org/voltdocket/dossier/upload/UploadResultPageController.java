package org.voltdocket.dossier.upload;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.voltdocket.assessment.web.UploadHandler;
import org.voltdocket.kernel.Actor;

/** Tells a page what a complete upload became, as the same list that a form of files gets. */
@Controller
class UploadResultPageController {

    private final ResumableUploadService uploads;
    private final UploadHandler outcomes;

    UploadResultPageController(ResumableUploadService uploads, UploadHandler outcomes) {
        this.uploads = uploads;
        this.outcomes = outcomes;
    }

    @PostMapping("/uploads/{upload}/evidence")
    String finish(Actor actor, @PathVariable UUID upload, Model model, HttpServletResponse response) {
        String name = uploads.find(actor, upload).fileName();
        UploadHandler.Outcome outcome = outcomes.outcome(name, uploads.finish(actor, upload));
        if (outcome.refused() != null) {
            response.setStatus(HttpServletResponse.SC_UNPROCESSABLE_CONTENT);
        }
        model.addAttribute("outcomes", List.of(outcome));
        return "dossier/outcome :: list";
    }
}
