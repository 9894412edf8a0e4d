package org.voltdocket.dossier.share;

import jakarta.servlet.http.HttpServletResponse;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.voltdocket.access.rows.SeesAllRows;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.dossier.DossierService;
import org.voltdocket.kernel.Actor;

/** The summary that a link shows to anyone who has it. */
@Controller
class SharedCasePageController {

    private final CaseLinkService links;
    private final CaseService cases;
    private final DossierService dossiers;

    SharedCasePageController(CaseLinkService links, CaseService cases, DossierService dossiers) {
        this.links = links;
        this.cases = cases;
        this.dossiers = dossiers;
    }

    /** Whoever has the link is not signed in, so the link alone decides which case is read. */
    @SeesAllRows
    @GetMapping("/shared/{secret}")
    String show(@PathVariable String secret, Model model, HttpServletResponse response) {
        response.setHeader("X-Robots-Tag", "noindex, nofollow, noarchive");
        CaseLink link = links.open(secret);
        Dossier dossier = dossiers.of(
                Actor.system(), cases.require(Actor.system(), link.caseId()).number());
        model.addAttribute("link", link);
        model.addAttribute("ref", dossier.file().ref());
        model.addAttribute("items", dossier.evidence());
        model.addAttribute(
                "a", dossier.assessment().map(StoredAssessment::assessment).orElse(null));
        model.addAttribute("changedAt", dossier.changedAt());
        model.addAttribute(
                "workshop",
                dossier.workshopNames().values().stream().findFirst().orElse(null));
        return "share/summary";
    }
}
