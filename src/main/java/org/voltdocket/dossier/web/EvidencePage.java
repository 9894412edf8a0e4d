package org.voltdocket.dossier.web;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.servlet.mvc.method.annotation.StreamingResponseBody;
import org.voltdocket.assessment.Assessments;
import org.voltdocket.assessment.KeptAssessment;
import org.voltdocket.casefile.Cases;
import org.voltdocket.casefile.NotVisible;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.Series;
import org.voltdocket.evidence.SeriesQuery;
import org.voltdocket.kernel.Actor;

/** One item of evidence: what was read from it, its series for the chart, its original bytes. */
@Controller
class EvidencePage {

    private final EvidenceArchive archive;
    private final Assessments assessments;
    private final Cases cases;
    private final CasePageModel pages;

    EvidencePage(EvidenceArchive archive, Assessments assessments, Cases cases, CasePageModel pages) {
        this.archive = archive;
        this.assessments = assessments;
        this.cases = cases;
        this.pages = pages;
    }

    @GetMapping("/evidence/{id}")
    String show(Actor actor, @PathVariable UUID id, Model model) {
        EvidenceItem item = archive.item(actor, id);
        Assessment assessment = assessments
                .latest(item.caseId())
                .map(KeptAssessment::assessment)
                .orElse(null);
        Reading reading = archive.reading(id).orElse(null);
        model.addAttribute("item", item);
        model.addAttribute("ref", cases.require(actor, item.caseId()));
        model.addAttribute("members", reading == null ? Map.of() : ReadingText.of(reading));
        model.addAttribute("findings", Judgement.lines(assessments.findingsOf(item.caseId(), id), List.of(item)));
        if (item.isRecording()) {
            model.addAttribute("rec", pages.recording(actor, item, assessment));
            model.addAttribute("summary", reading instanceof Recording r ? Summary.of(r) : null);
        }
        return "dossier/evidence";
    }

    /** The table by minute alone, as the case page unfolds it. */
    @GetMapping("/evidence/{id}/summary")
    String summary(Actor actor, @PathVariable UUID id, Model model) {
        archive.item(actor, id);
        if (!(archive.reading(id).orElse(null) instanceof Recording recording)) {
            throw new NotVisible("recording " + id);
        }
        model.addAttribute("summary", Summary.of(recording));
        return "dossier/summary";
    }

    @GetMapping(path = "/evidence/{id}/series", produces = MediaType.APPLICATION_JSON_VALUE)
    @ResponseBody
    Series series(
            Actor actor,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") List<String> channels,
            @RequestParam(required = false) Double from,
            @RequestParam(required = false) Double to,
            @RequestParam(required = false) Integer points) {
        return archive.series(actor, id, new SeriesQuery(channels, from, to, points));
    }

    @GetMapping("/evidence/{id}/content")
    ResponseEntity<StreamingResponseBody> content(Actor actor, @PathVariable UUID id) {
        EvidenceItem item = archive.item(actor, id);
        String digest = Base64.getEncoder().encodeToString(item.sha256().bytes());
        return ResponseEntity.ok()
                .contentType(MediaType.parseMediaType(item.mediaType()))
                .contentLength(item.bytes())
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment()
                                .filename(item.fileName(), StandardCharsets.UTF_8)
                                .build()
                                .toString())
                .header("Repr-Digest", "sha-256=:" + digest + ":")
                .body(out -> archive.writeContent(id, out));
    }
}
