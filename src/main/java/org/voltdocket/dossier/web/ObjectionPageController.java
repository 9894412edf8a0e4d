package org.voltdocket.dossier.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import org.springframework.http.ProblemDetail;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.claim.service.ObjectionService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.ui.error.ProblemDetails;

/** Takes objections and their answers from the page of a case. What was typed comes back with the reason where it is refused. */
@Controller
class ObjectionPageController {

    private final CasePageModel pages;
    private final ObjectionService objections;

    ObjectionPageController(CasePageModel pages, ObjectionService objections) {
        this.pages = pages;
        this.objections = objections;
    }

    private interface Act {
        void on(CaseNumber number);
    }

    @PostMapping("/cases/{number}/claim/objection")
    String object(
            Actor actor,
            @PathVariable String number,
            @RequestParam(defaultValue = "") String reason,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        flash.addFlashAttribute("notice", "claim.notice.objection");
        Act act = parsed -> objections.object(actor, parsed, reason);
        return take(actor, pages.number(number), act, Map.of("objection", reason), model, response);
    }

    @PostMapping("/cases/{number}/claim/objection/answer")
    String answer(
            Actor actor,
            @PathVariable String number,
            @RequestParam(defaultValue = "") String reason,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        flash.addFlashAttribute("notice", "claim.notice.objection-answered");
        Act act = parsed -> objections.answer(actor, parsed, reason);
        return take(actor, pages.number(number), act, Map.of("objection-answer", reason), model, response);
    }

    private String take(
            Actor actor,
            CaseNumber number,
            Act act,
            Map<String, String> given,
            Model model,
            HttpServletResponse response) {
        try {
            act.on(number);
            return "redirect:/cases/" + number + "#claim";
        } catch (RequestException refused) {
            ProblemDetail problem = ProblemDetails.of(refused);
            pages.fill(actor, number, model);
            model.addAttribute("claimError", problem.getDetail());
            model.addAttribute("claimGiven", given);
            response.setStatus(problem.getStatus());
            return "dossier/case";
        }
    }
}
