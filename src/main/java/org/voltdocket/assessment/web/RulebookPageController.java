package org.voltdocket.assessment.web;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.voltdocket.assessment.edition.Edition;
import org.voltdocket.assessment.edition.EditionErrors;
import org.voltdocket.assessment.edition.EditionService;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** A released edition of the rule book as a table that can be read; the one in force where none is named. */
@Controller
class RulebookPageController {

    private final EditionService editions;
    private final RuleText text;

    RulebookPageController(EditionService editions, RuleText text) {
        this.editions = editions;
        this.text = text;
    }

    @GetMapping("/rulebook")
    String show(@RequestParam Optional<String> edition, Model model) {
        Edition shown =
                edition.filter(name -> !name.isBlank()).map(this::released).orElseGet(editions::inForce);
        Rulebook book = editions.rulebook(shown.sha256());
        model.addAttribute("inForce", editions.inForce().equals(shown));
        model.addAttribute("book", book);
        model.addAttribute(
                "odds",
                book.startingOdds().entrySet().stream()
                        .sorted(Map.Entry.<Cause, Double>comparingByValue().reversed())
                        .map(e -> new Odds(e.getKey().id(), e.getValue()))
                        .toList());
        model.addAttribute(
                "decisions",
                book.decisions().entrySet().stream()
                        .map(e -> new DecisionRow(
                                e.getKey().id(),
                                e.getValue().value(),
                                e.getKey().unit(),
                                e.getValue().meaning(),
                                e.getValue().source()))
                        .toList());
        model.addAttribute(
                "tests",
                book.tests().entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(e -> new TestRow(
                                e.getKey().id(),
                                e.getValue().minutes(),
                                e.getValue().outside().entrySet().stream()
                                        .sorted(Map.Entry.<Cause, Double>comparingByValue()
                                                .reversed())
                                        .map(cause -> new Odds(cause.getKey().id(), cause.getValue()))
                                        .toList(),
                                e.getValue().otherwise(),
                                e.getValue().source()))
                        .toList());
        model.addAttribute("evaluation", EvaluationReport.of(book.edition()).orElse(null));
        model.addAttribute("rules", book.rules().stream().map(text::line).toList());
        return "assessment/rulebook";
    }

    private Edition released(String name) {
        Edition edition = editions.require(name);
        if (!edition.released()) {
            throw EditionErrors.unknown(name);
        }
        return edition;
    }

    /** A decision limit of the edition. */
    public record DecisionRow(String id, double value, String unit, String meaning, String source) {}

    /**
     * A test or recording that a workshop can still make.
     *
     * @param outside probability that its result is outside the limits, by cause
     * @param otherwise the same for all other causes
     */
    public record TestRow(String kind, double minutes, List<Odds> outside, double otherwise, String source) {}

    /** A cause with a probability. */
    public record Odds(String cause, double share) {}
}
