package org.voltdocket.assessment.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.voltdocket.assessment.CaseAssessor;
import org.voltdocket.assessment.ReassessmentResult;
import org.voltdocket.assessment.edition.Edition;
import org.voltdocket.assessment.edition.EditionErrors;
import org.voltdocket.assessment.edition.EditionService;
import org.voltdocket.assessment.rerun.AssessmentDifference;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** A case as two editions judge it, side by side, the findings that differ first. Nothing is kept. */
@Controller
class ComparePageController {

    private final CaseService cases;
    private final EditionService editions;
    private final CaseAssessor assessor;

    ComparePageController(CaseService cases, EditionService editions, CaseAssessor assessor) {
        this.cases = cases;
        this.editions = editions;
        this.assessor = assessor;
    }

    /** What one edition says. */
    public record Side(Edition edition, ReassessmentResult said) {

        public Assessment assessment() {
            return said.after();
        }
    }

    /**
     * A finding on both sides; either is null where its edition has none.
     *
     * @param weighs decibans to the first cause of either side, {@code cause → [left, right]}
     */
    public record Pair(String id, Finding left, Finding right, Map<String, Double[]> weighs) {

        /** The one that is there. */
        public Finding any() {
            return left == null ? right : left;
        }
    }

    @GetMapping("/cases/{number}/compare")
    String compare(
            Actor actor,
            @PathVariable CaseNumber number,
            @RequestParam Optional<String> edition,
            @RequestParam Optional<String> with,
            Model model) {
        CaseReference ref = cases.require(actor, number);
        Side left = side(actor, ref, edition);
        Side right = side(actor, ref, with);
        AssessmentDifference difference =
                AssessmentDifference.between(Optional.of(left.assessment()), right.assessment());
        Set<String> differing = Set.copyOf(difference.findings());
        List<Pair> pairs = pairs(left.assessment(), right.assessment());
        model.addAttribute("ref", ref);
        model.addAttribute("left", left);
        model.addAttribute("right", right);
        model.addAttribute(
                "differing",
                pairs.stream().filter(p -> differing.contains(p.id())).toList());
        model.addAttribute(
                "alike", pairs.stream().filter(p -> !differing.contains(p.id())).toList());
        model.addAttribute("causes", causes(left.assessment(), right.assessment()));
        model.addAttribute("editions", choice(actor));
        return "assessment/compare";
    }

    private Side side(Actor actor, CaseReference ref, Optional<String> name) {
        Edition edition =
                name.filter(text -> !text.isBlank()).map(editions::require).orElseGet(editions::inForce);
        if (!edition.released() && !actor.canAdminister()) {
            throw EditionErrors.unknown(edition.name());
        }
        return new Side(edition, assessor.trial(ref.id(), editions.rulebook(edition.sha256())));
    }

    private List<String> choice(Actor actor) {
        return editions.all().stream()
                .filter(edition -> edition.released() || actor.canAdminister())
                .map(Edition::name)
                .distinct()
                .sorted()
                .toList();
    }

    private static List<Pair> pairs(Assessment left, Assessment right) {
        Map<String, Finding> one = new LinkedHashMap<>();
        left.findings().forEach(f -> one.put(f.id(), f));
        Map<String, Finding> other = new LinkedHashMap<>();
        right.findings().forEach(f -> other.put(f.id(), f));
        Set<String> ids = new java.util.LinkedHashSet<>(one.keySet());
        ids.addAll(other.keySet());
        Set<String> firsts = new TreeSet<>(Set.of(left.causes().get(0).cause().id()));
        firsts.add(right.causes().get(0).cause().id());
        List<Pair> pairs = new ArrayList<>();
        for (String id : ids) {
            Map<String, Double[]> weighs = new LinkedHashMap<>();
            for (String cause : firsts) {
                weighs.put(cause, new Double[] {weight(left, cause, id), weight(right, cause, id)});
            }
            pairs.add(new Pair(id, one.get(id), other.get(id), weighs));
        }
        return pairs;
    }

    private static Double weight(Assessment assessment, String cause, String finding) {
        return assessment.causes().stream()
                .filter(ranked -> ranked.cause().id().equals(cause))
                .flatMap(ranked -> ranked.weights().stream())
                .filter(weight -> weight.finding().equals(finding))
                .map(Assessment.Weight::decibans)
                .findFirst()
                .orElse(null);
    }

    /** Causes with their probability on both sides, in the order of the left one. */
    private static Map<String, double[]> causes(Assessment left, Assessment right) {
        Map<String, double[]> both = new LinkedHashMap<>();
        left.causes().forEach(c -> both.put(c.cause().id(), new double[] {c.probability(), 0}));
        right.causes().forEach(c -> both.get(c.cause().id())[1] = c.probability());
        return both;
    }
}
