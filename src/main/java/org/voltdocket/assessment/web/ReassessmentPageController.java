package org.voltdocket.assessment.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.assessment.edition.Edition;
import org.voltdocket.assessment.edition.EditionService;
import org.voltdocket.assessment.rerun.CaseChange;
import org.voltdocket.assessment.rerun.ReassessmentRun;
import org.voltdocket.assessment.rerun.ReassessmentService;
import org.voltdocket.assessment.rerun.RunAction;
import org.voltdocket.assessment.rerun.RunErrors;
import org.voltdocket.assessment.rerun.RunMode;
import org.voltdocket.assessment.rerun.RunProgress;
import org.voltdocket.assessment.rerun.RunSummary;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** Runs over the archive: ask for one, watch it, pause, resume, stop, and see what it found. */
@Controller
@RequestMapping("/reassessments")
class ReassessmentPageController {

    private static final int SHOWN = 100;

    private final ReassessmentService runs;
    private final EditionService editions;
    private final CaseService cases;

    ReassessmentPageController(ReassessmentService runs, EditionService editions, CaseService cases) {
        this.runs = runs;
        this.editions = editions;
        this.cases = cases;
    }

    /** A run with how far it is. */
    public record Line(ReassessmentRun run, RunProgress progress) {}

    @GetMapping
    String list(Actor actor, Model model) {
        model.addAttribute(
                "runs",
                runs.latest(actor).stream()
                        .map(run -> new Line(run, runs.progress(run)))
                        .toList());
        Map<String, Edition> choice = new LinkedHashMap<>();
        editions.all().forEach(edition -> choice.computeIfAbsent(edition.name(), editions::require));
        model.addAttribute("editions", List.copyOf(choice.values()));
        model.addAttribute("inForce", editions.inForce());
        return "assessment/reassessments";
    }

    @PostMapping
    String start(Actor actor, @RequestParam String mode, @RequestParam String edition, RedirectAttributes flash) {
        try {
            RunMode chosen = RunMode.of(mode).orElseThrow(() -> RunErrors.invalid("The mode is 'trial' or 'final'."));
            return "redirect:/reassessments/" + runs.ask(actor, chosen, edition).id();
        } catch (RequestException refused) {
            flash.addFlashAttribute("refused", refused.getMessage());
            return "redirect:/reassessments";
        }
    }

    @GetMapping("/{id}")
    String show(Actor actor, @PathVariable UUID id, @RequestParam(defaultValue = "0") int from, Model model) {
        ReassessmentRun run = runs.require(actor, id);
        int start = Math.max(0, from);
        RunSummary found = runs.findings(run);
        List<CaseChange> changes = runs.changes(run, start, SHOWN);
        model.addAttribute("run", run);
        model.addAttribute("progress", runs.progress(run));
        model.addAttribute("found", found);
        model.addAttribute("numbers", numbers(actor, found));
        model.addAttribute("changes", changes);
        model.addAttribute("failures", runs.failures(run, SHOWN));
        model.addAttribute("from", start);
        model.addAttribute("shown", SHOWN);
        model.addAttribute("before", editions.inForce().name());
        return "assessment/reassessment";
    }

    @PostMapping("/{id}")
    String take(Actor actor, @PathVariable UUID id, @RequestParam String step, RedirectAttributes flash) {
        RunAction chosen = RunAction.of(step)
                .orElseThrow(() -> RequestException.malformed("There is no step '" + step + "' of a run."));
        try {
            runs.take(actor, id, chosen);
        } catch (RequestException refused) {
            if (refused.status() != 409) {
                throw refused;
            }
            flash.addFlashAttribute("refused", refused.getMessage());
        }
        return "redirect:/reassessments/" + id;
    }

    private Map<UUID, String> numbers(Actor actor, RunSummary found) {
        Map<UUID, String> numbers = new LinkedHashMap<>();
        Optional.of(found.ways()).stream()
                .flatMap(List::stream)
                .flatMap(group -> group.samples().stream())
                .forEach(id -> numbers.put(id, cases.require(actor, id).number().value()));
        found.rules().stream()
                .flatMap(group -> group.samples().stream())
                .forEach(id -> numbers.put(id, cases.require(actor, id).number().value()));
        return numbers;
    }
}
