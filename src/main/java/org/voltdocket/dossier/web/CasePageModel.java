package org.voltdocket.dossier.web;

import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;
import org.voltdocket.assessment.KeptAssessment;
import org.voltdocket.casefile.NotVisible;
import org.voltdocket.casefile.web.FactFields;
import org.voltdocket.claim.Claims;
import org.voltdocket.claim.notice.Notices;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.dossier.Dossiers;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.Series;
import org.voltdocket.evidence.SeriesQuery;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.returned.Returns;
import org.voltdocket.ui.Routes;
import org.voltdocket.ui.Words;

/** Fills the model of the case page from one dossier. */
@Component
class CasePageModel {

    private final Dossiers dossiers;
    private final EvidenceArchive archive;
    private final Claims claims;
    private final CaseClaims caseClaims;
    private final Returns returns;
    private final Notices notices;
    private final Routes routes;
    private final Words words;

    CasePageModel(
            Dossiers dossiers,
            EvidenceArchive archive,
            Claims claims,
            CaseClaims caseClaims,
            Notices notices,
            Returns returns,
            Routes routes,
            Words words) {
        this.words = words;
        this.returns = returns;
        this.claims = claims;
        this.caseClaims = caseClaims;
        this.notices = notices;
        this.dossiers = dossiers;
        this.archive = archive;
        this.routes = routes;
    }

    /** @throws NotVisible if the text is no case number: there is no such case */
    CaseNumber number(String text) {
        try {
            return CaseNumber.parse(text);
        } catch (IllegalArgumentException e) {
            throw new NotVisible("case " + text);
        }
    }

    void fill(Actor actor, CaseNumber number, Model model) {
        Dossier dossier = dossiers.of(actor, number);
        List<EvidenceItem> items = dossier.evidence();
        Assessment assessment =
                dossier.assessment().map(KeptAssessment::assessment).orElse(null);
        model.addAttribute("dossier", dossier);
        model.addAttribute("ref", dossier.file().ref());
        model.addAttribute("items", items);
        model.addAttribute("judgement", assessment == null ? null : Judgement.of(assessment, items));
        model.addAttribute(
                "assessedAt",
                dossier.assessment().map(KeptAssessment::assessedAt).orElse(null));
        model.addAttribute(
                "recordings",
                items.stream()
                        .filter(EvidenceItem::isRecording)
                        .map(item -> recording(actor, item, assessment))
                        .toList());
        model.addAttribute("known", FactFields.values(dossier.file().facts()));
        model.addAttribute("values", FactFields.values(dossier.file().facts()));
        model.addAttribute("errors", Map.of());
        model.addAttribute(
                "address",
                ServletUriComponentsBuilder.fromCurrentContextPath()
                        .path("/cases/" + number)
                        .toUriString());
        model.addAttribute("hasReport", routes.has("/cases/{number}/report.pdf"));
        model.addAttribute("hasBag", routes.has("/cases/{number}/bag.zip"));
        model.addAttribute(
                "claim", ClaimPanel.of(actor, dossier, caseClaims.earlier(actor, dossier), claims.askable(), words));
        model.addAttribute(
                "notices",
                actor.role() == Role.WORKSHOP
                        ? List.of()
                        : notices.ofCase(actor, dossier.file().ref().id()));
        model.addAttribute("claimGiven", Map.of());
        model.addAttribute(
                "benchOutcome",
                returns.outcomeOf(actor, dossier.file().ref().id()).orElse(null));
        model.addAttribute("fields", FactFields.ALL);
        model.addAttribute("mayChange", actor.role() != Role.AUDITOR);
        model.addAttribute("desk", actor.role() != Role.WORKSHOP);
    }

    RecordingView recording(Actor actor, EvidenceItem item, Assessment assessment) {
        Series ends =
                archive.series(actor, item.id(), new SeriesQuery(List.of("measured_v"), null, null, SeriesQuery.LEAST));
        String id = item.id().toString();
        return RecordingView.of(
                item,
                ends.from(),
                ends.to(),
                ends.marks(),
                assessment == null ? List.of() : assessment.regimes().getOrDefault(id, List.of()),
                assessment == null
                        ? List.of()
                        : assessment.findings().stream()
                                .filter(f -> id.equals(f.evidence()))
                                .toList());
    }
}
