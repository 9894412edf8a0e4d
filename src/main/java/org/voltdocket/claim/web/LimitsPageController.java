package org.voltdocket.claim.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.claim.decision.ClaimLimits;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** The page of the limits above which a second person confirms. An administrator sets them; the other roles of the distributor read them. */
@Controller
class LimitsPageController {

    private final ClaimLimits limits;

    LimitsPageController(ClaimLimits limits) {
        this.limits = limits;
    }

    @GetMapping("/claim-limits")
    String show(Actor actor, Model model) {
        return fill(actor, Map.of(), model);
    }

    @PostMapping("/claim-limits")
    String set(
            Actor actor,
            @RequestParam Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            String amount = given.getOrDefault("amount", "").strip().replace(',', '.');
            limits.set(
                    actor,
                    given.getOrDefault("currency", "").toUpperCase(java.util.Locale.ROOT),
                    amount,
                    given.get("reason"));
            flash.addFlashAttribute("notice", "limits.done");
            return "redirect:/claim-limits";
        } catch (RequestException refused) {
            response.setStatus(HttpServletResponse.SC_BAD_REQUEST);
            model.addAttribute("refused", refused.getMessage());
            model.addAttribute("refusedField", refused.field());
            return fill(actor, given, model);
        }
    }

    private String fill(Actor actor, Map<String, String> given, Model model) {
        model.addAttribute("current", limits.current(actor));
        model.addAttribute("all", limits.all(actor));
        model.addAttribute("given", given);
        model.addAttribute("may", actor.canAdminister());
        return "claim/limits";
    }
}
