package org.voltdocket.dossier.web;

import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.web.FactFields;
import org.voltdocket.claim.service.ClaimService;
import org.voltdocket.claim.service.EvidenceRequestService;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.dossier.DossierService;
import org.voltdocket.dossier.display.AssessmentDisplay;
import org.voltdocket.dossier.display.CaseConclusion;
import org.voltdocket.dossier.display.RecordingView;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.Series;
import org.voltdocket.evidence.SeriesQuery;
import org.voltdocket.evidence.SeriesService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.notice.NoticeService;
import org.voltdocket.returned.service.ReturnService;
import org.voltdocket.ui.TextFormatter;

/** Fills the model of the case page. */
@Component
class CasePageModel {

    /** Recordings drawn on the page; each has a page of its own. */
    private static final int MAX_FIGURES = 10;

    /** Latest entries of the trail on the page; the bag has all. */
    private static final int MAX_TRAIL = 100;

    private final DossierService dossiers;
    private final SeriesService series;
    private final ClaimService claims;
    private final EvidenceRequestService requests;
    private final ReturnService returns;
    private final NoticeService notices;
    private final TextFormatter words;

    CasePageModel(
            DossierService dossiers,
            SeriesService series,
            ClaimService claims,
            EvidenceRequestService requests,
            NoticeService notices,
            ReturnService returns,
            TextFormatter words) {
        this.words = words;
        this.returns = returns;
        this.claims = claims;
        this.requests = requests;
        this.notices = notices;
        this.dossiers = dossiers;
        this.series = series;
    }

    /** @throws RequestException (404) if the text is not a case number */
    CaseNumber number(String text) {
        try {
            return CaseNumber.parse(text);
        } catch (IllegalArgumentException e) {
            throw RequestException.notFound("case " + text);
        }
    }

    void fill(Actor actor, CaseNumber number, Model model) {
        Dossier dossier = dossiers.of(actor, number);
        List<EvidenceItem> items = dossier.evidence();
        Assessment assessment =
                dossier.assessment().map(StoredAssessment::assessment).orElse(null);
        model.addAttribute("dossier", dossier);
        model.addAttribute("ref", dossier.file().ref());
        model.addAttribute("items", items);
        model.addAttribute("assessed", assessment == null ? null : AssessmentDisplay.of(assessment, items));
        Predicate<String> isEvidence = id -> words.knows("kind", id);
        model.addAttribute(
                "missing",
                assessment == null
                        ? List.of()
                        : CaseConclusion.missing(number, assessment, actor.canEditCases(), isEvidence));
        model.addAttribute(
                "conclusion",
                CaseConclusion.of(
                        number,
                        assessment,
                        actor.canEditCases(),
                        actor.canDecideClaims() && dossier.claim().isPresent(),
                        isEvidence));
        model.addAttribute(
                "assessedAt",
                dossier.assessment().map(StoredAssessment::assessedAt).orElse(null));
        List<EvidenceItem> recordings =
                items.stream().filter(EvidenceItem::isRecording).toList();
        List<EvidenceItem> drawn = last(MAX_FIGURES, recordings);
        model.addAttribute(
                "recordings",
                drawn.stream().map(item -> recording(actor, item, assessment)).toList());
        model.addAttribute("recordingsNotDrawn", recordings.size() - drawn.size());
        model.addAttribute("latestOfTrail", last(MAX_TRAIL, dossier.trail()));
        model.addAttribute("known", FactFields.values(dossier.file().facts()));
        model.addAttribute("values", FactFields.values(dossier.file().facts()));
        model.addAttribute("errors", Map.of());
        model.addAttribute(
                "claim",
                ClaimPanel.of(
                        actor,
                        dossier,
                        claims.earlier(actor, dossier.file().ref().id(), dossier.claim()),
                        requests.requestableItems(),
                        words));
        model.addAttribute(
                "notices",
                actor.isWorkshop()
                        ? List.of()
                        : notices.ofCase(actor, dossier.file().ref().id()));
        model.addAttribute("claimGiven", Map.of());
        model.addAttribute(
                "benchOutcome",
                returns.outcomeOf(actor, dossier.file().ref().id()).orElse(null));
        model.addAttribute("fields", FactFields.ALL);
        model.addAttribute("mayChange", actor.canEditCases());
        model.addAttribute("desk", !actor.isWorkshop());
    }

    private static <T> List<T> last(int most, List<T> all) {
        return all.subList(Math.max(0, all.size() - most), all.size());
    }

    RecordingView recording(Actor actor, EvidenceItem item, Assessment assessment) {
        Series ends =
                series.read(actor, item.id(), new SeriesQuery(List.of("measured_v"), null, null, SeriesQuery.LEAST));
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
