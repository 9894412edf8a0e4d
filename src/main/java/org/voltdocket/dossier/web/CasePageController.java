package org.voltdocket.dossier.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalLong;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.CaseEditService;
import org.voltdocket.casefile.CaseRequest;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.web.FactFields;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;

/** The page of a case and its actions. */
@Controller
class CasePageController {

    /** Where a form that edits facts continues, by its field {@code next}; without it on the case page. */
    private static final Map<String, String> NEXT = Map.of("tests", "/tests", "claim", "#claim");

    private final CasePageModel pages;
    private final CaseEditService cases;
    private final AssessmentService assessments;

    CasePageController(CasePageModel pages, CaseEditService cases, AssessmentService assessments) {
        this.pages = pages;
        this.cases = cases;
        this.assessments = assessments;
    }

    @GetMapping("/cases/{number}")
    String show(Actor actor, @PathVariable String number, Model model) {
        CaseNumber parsed = pages.number(number);
        if (!parsed.value().equals(number)) {
            return "redirect:/cases/" + parsed;
        }
        pages.fill(actor, parsed, model);
        return "dossier/case";
    }

    @PostMapping("/cases/{number}/facts")
    String mend(
            Actor actor,
            @PathVariable String number,
            @RequestParam Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        CaseNumber parsed = pages.number(number);
        Map<String, String> errors = new LinkedHashMap<>();
        try {
            OptionalLong version = given.getOrDefault("version", "").matches("\\d{1,18}")
                    ? OptionalLong.of(Long.parseLong(given.get("version")))
                    : OptionalLong.empty();
            cases.updateFacts(actor, parsed, CaseRequest.patchOfForm(given), version);
            flash.addFlashAttribute("notice", "case.notice.mended");
            return "redirect:/cases/" + parsed + NEXT.getOrDefault(given.getOrDefault("next", ""), "");
        } catch (RequestException refused) {
            refused.errors().forEach(e -> errors.merge(e.field(), e.message(), (a, b) -> a + " " + b));
            boolean changed = refused.code().equals(CaseService.CHANGED_SINCE_READ);
            if (changed) {
                model.addAttribute("changed", refused.getMessage());
            }
            response.setStatus(changed ? HttpServletResponse.SC_CONFLICT : HttpServletResponse.SC_BAD_REQUEST);
        }
        pages.fill(actor, parsed, model);
        model.addAttribute("errors", errors);
        model.addAttribute("values", given);
        model.addAttribute("fields", FactFields.ALL);
        return "dossier/case";
    }

    @PostMapping("/cases/{number}/judge")
    String judge(Actor actor, @PathVariable String number, RedirectAttributes flash) {
        CaseNumber parsed = pages.number(number);
        assessments.reassess(actor, parsed);
        flash.addFlashAttribute("notice", "case.notice.judged");
        return "redirect:/cases/" + parsed;
    }
}
