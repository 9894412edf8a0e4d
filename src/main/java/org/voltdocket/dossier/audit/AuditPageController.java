package org.voltdocket.dossier.audit;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** The page of decisions to review. */
@Controller
class AuditPageController {

    private final DecisionReviewService reviews;

    AuditPageController(DecisionReviewService reviews) {
        this.reviews = reviews;
    }

    @GetMapping("/decisions/again")
    String reviews(Actor actor, Model model) {
        List<DecisionReviewService.ReviewItem> all = reviews.all(actor);
        model.addAttribute("all", all);
        model.addAttribute(
                "waiting", all.stream().filter(one -> one.review().isEmpty()).count());
        model.addAttribute("mayReview", actor.canDecideClaims());
        model.addAttribute("bench", bench(actor));
        return "audit/again";
    }

    @PostMapping("/decisions/again/{claim}")
    String review(
            Actor actor,
            @PathVariable UUID claim,
            @RequestParam boolean stands,
            @RequestParam(defaultValue = "") String reason,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            reviews.review(actor, claim, stands, reason);
            flash.addFlashAttribute("notice", "again.notice");
            return "redirect:/decisions/again";
        } catch (RequestException refused) {
            response.setStatus(refused.status());
            model.addAttribute("refused", refused.getMessage());
            model.addAttribute("refusedClaim", claim);
            return reviews(actor, model);
        }
    }

    /** Clerks see this page without the tabs of the bench. */
    private static boolean bench(Actor actor) {
        return actor.canAudit();
    }
}
