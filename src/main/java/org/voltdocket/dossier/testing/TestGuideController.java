package org.voltdocket.dossier.testing;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.web.FactFields;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.dossier.DossierService;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** The page that leads through the tests of a case. */
@Controller
class TestGuideController {

    private final CaseService cases;
    private final DossierService dossiers;
    private final TestGuide guide;

    TestGuideController(CaseService cases, DossierService dossiers, TestGuide guide) {
        this.cases = cases;
        this.dossiers = dossiers;
        this.guide = guide;
    }

    @GetMapping("/cases/{number}/tests")
    String show(Actor actor, @PathVariable CaseNumber number, Model model) {
        cases.requireToFeed(actor, number);
        Dossier dossier = dossiers.of(actor, number);
        Assessment assessment =
                dossier.assessment().map(StoredAssessment::assessment).orElse(null);
        Set<EvidenceKind> present =
                dossier.evidence().stream().map(EvidenceItem::kind).collect(Collectors.toSet());
        TestGuide.Guide steps =
                guide.of(assessment, present, dossier.file().facts().complaint());
        model.addAttribute("ref", dossier.file().ref());
        model.addAttribute("version", dossier.file().version());
        model.addAttribute("guide", steps);
        model.addAttribute("complaint", dossier.file().facts().complaint());
        model.addAttribute("complaints", List.of(Complaint.values()));
        model.addAttribute("values", FactFields.values(dossier.file().facts()));
        model.addAttribute("errors", Map.of());
        model.addAttribute(
                "asked",
                FactFields.ALL.stream()
                        .filter(field -> steps.facts().contains(field.name()))
                        .toList());
        return "testing/guide";
    }
}
