package org.voltdocket.dossier.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.http.ProblemDetail;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.assessment.web.UploadHandler;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.claim.repository.RequestedItemAnswer;
import org.voltdocket.claim.service.EvidenceRequestService;
import org.voltdocket.evidence.web.MultipartUploads;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.ui.error.ProblemDetails;

/** Takes what a workshop puts into the place of one thing it is asked for. A file refused shows its reasons at that place. */
@Controller
class EvidenceRequestPageController {

    private final CasePageModel pages;
    private final CaseService cases;
    private final EvidenceRequestService requests;
    private final UploadHandler uploads;

    EvidenceRequestPageController(
            CasePageModel pages, CaseService cases, EvidenceRequestService requests, UploadHandler uploads) {
        this.pages = pages;
        this.cases = cases;
        this.requests = requests;
        this.uploads = uploads;
    }

    @PostMapping("/cases/{number}/claim/requested-items/{position}")
    String answer(
            Actor actor,
            @PathVariable String number,
            @PathVariable int position,
            @RequestParam(name = "file", required = false) MultipartFile file,
            @RequestParam(required = false) String words,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response)
            throws IOException {
        CaseNumber parsed = pages.number(number);
        CaseReference ref = cases.requireToFeed(actor, parsed);
        try {
            requests.requireRequested(actor, parsed, position);
            Optional<UploadHandler.Outcome> outcome = MultipartUploads.isPresent(file)
                    ? Optional.of(uploads.receive(actor, ref, file, null))
                    : Optional.empty();
            if (outcome.isPresent() && outcome.get().refused() != null) {
                response.setStatus(outcome.get().refused().reason().status());
                pages.fill(actor, parsed, model);
                model.addAttribute("requestedItemAt", position);
                model.addAttribute("outcomes", List.of(outcome.get()));
                return "dossier/case";
            }
            requests.answer(
                    actor,
                    parsed,
                    new RequestedItemAnswer(
                            position, outcome.map(made -> made.item().id()), words));
            flash.addFlashAttribute("notice", "claim.notice.item");
            return "redirect:/cases/" + parsed + "#claim";
        } catch (RequestException refused) {
            ProblemDetail problem = ProblemDetails.of(refused);
            pages.fill(actor, parsed, model);
            model.addAttribute("claimError", problem.getDetail());
            model.addAttribute("claimGiven", Map.of());
            response.setStatus(problem.getStatus());
            return "dossier/case";
        }
    }
}
