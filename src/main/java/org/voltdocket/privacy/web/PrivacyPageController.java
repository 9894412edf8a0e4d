package org.voltdocket.privacy.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.function.BiConsumer;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.privacy.ErasurePart;
import org.voltdocket.privacy.ErasureService;

/** The administrator's page on personal data: what is due, holds, erasures, export. */
@Controller
class PrivacyPageController {

    private final ErasureService erasures;

    PrivacyPageController(ErasureService erasures) {
        this.erasures = erasures;
    }

    @GetMapping("/privacy")
    String show(Actor actor, Model model) {
        return fill(actor, Map.of(), model);
    }

    @PostMapping("/privacy/holds")
    String hold(
            Actor actor,
            @RequestParam Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        return act(
                actor, given, model, flash, response, "hold", (number, reason) -> erasures.hold(actor, number, reason));
    }

    @PostMapping("/privacy/holds/release")
    String release(
            Actor actor,
            @RequestParam Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        return act(
                actor,
                given,
                model,
                flash,
                response,
                "release",
                (number, reason) -> erasures.release(actor, number, reason));
    }

    @PostMapping("/privacy/erasures")
    String erase(
            Actor actor,
            @RequestParam Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        return act(actor, given, model, flash, response, "erase", (number, reason) -> {
            ErasurePart part = ErasureService.part(given.getOrDefault("part", ""))
                    .filter(one -> given.containsKey("confirmed"))
                    .orElseThrow(() -> RequestException.invalid(
                            "erasure-refused", "part", "State what is to be erased, and confirm it."));
            erasures.erase(actor, number, part, reason);
        });
    }

    @PostMapping("/privacy/erasures/due")
    String eraseDue(
            Actor actor,
            @RequestParam Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            erasures.eraseDue(actor, given.get("reason"));
            flash.addFlashAttribute("notice", "privacy.done.erase");
            return "redirect:/privacy";
        } catch (RequestException refused) {
            return refuse(actor, given, model, response, refused);
        }
    }

    private String act(
            Actor actor,
            Map<String, String> given,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response,
            String done,
            BiConsumer<CaseNumber, String> act) {
        try {
            act.accept(number(given.getOrDefault("number", "")), given.get("reason"));
            flash.addFlashAttribute("notice", "privacy.done." + done);
            return "redirect:/privacy";
        } catch (RequestException refused) {
            return refuse(actor, given, model, response, refused);
        }
    }

    private static CaseNumber number(String text) {
        try {
            return CaseNumber.parse(text);
        } catch (IllegalArgumentException e) {
            throw RequestException.invalid(
                    "erasure-refused", "number", "State the number of a case, such as V-000-008-H.");
        }
    }

    private String refuse(
            Actor actor,
            Map<String, String> given,
            Model model,
            HttpServletResponse response,
            RequestException refused) {
        response.setStatus(refused.status());
        model.addAttribute("refused", refused.getMessage());
        return fill(actor, given, model);
    }

    private String fill(Actor actor, Map<String, String> given, Model model) {
        model.addAttribute("due", erasures.preview(actor));
        model.addAttribute("periods", erasures.periods());
        model.addAttribute("holds", erasures.holds(actor));
        model.addAttribute("erasures", erasures.erasures(actor));
        model.addAttribute("parts", ErasurePart.values());
        model.addAttribute("given", given);
        return "privacy/privacy";
    }
}
