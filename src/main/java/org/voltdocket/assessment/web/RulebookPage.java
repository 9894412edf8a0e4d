package org.voltdocket.assessment.web;

import java.util.Map;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.voltdocket.assessment.InForce;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** The rule book in force as a table that can be read. */
@Controller
class RulebookPage {

    private final InForce inForce;
    private final RuleText text;

    RulebookPage(InForce inForce, RuleText text) {
        this.inForce = inForce;
        this.text = text;
    }

    @GetMapping("/rulebook")
    String show(Model model) {
        Rulebook book = inForce.rulebook();
        model.addAttribute("book", book);
        model.addAttribute(
                "odds",
                book.startingOdds().entrySet().stream()
                        .sorted(Map.Entry.<Cause, Double>comparingByValue().reversed())
                        .map(e -> new Odds(e.getKey().id(), e.getValue()))
                        .toList());
        model.addAttribute("rules", book.rules().stream().map(text::line).toList());
        return "assessment/rulebook";
    }

    /** Starting odds of a cause. */
    public record Odds(String cause, double share) {}
}
