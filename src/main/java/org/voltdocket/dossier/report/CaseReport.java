package org.voltdocket.dossier.report;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.Series;
import org.voltdocket.evidence.SeriesQuery;
import org.voltdocket.evidence.SeriesService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.paper.DocumentMetadata;
import org.voltdocket.paper.PdfDocument;
import org.voltdocket.ui.TextFormatter;

/** Prints the case report. The same dossier gives the same bytes. */
@Component
public class CaseReport {

    private static final int POINTS = 1200;
    private static final List<String> DRAWN = List.of("measured_v", "reported_v", "measured_a", "reported_a");

    private final EvidenceArchive archive;
    private final SeriesService recordings;
    private final TextFormatter words;

    CaseReport(EvidenceArchive archive, SeriesService recordings, TextFormatter words) {
        this.archive = archive;
        this.recordings = recordings;
        this.words = words;
    }

    /**
     * A whole report as PDF.
     *
     * @throws org.voltdocket.kernel.RequestException (404) if the actor may not see the evidence
     */
    public byte[] of(Actor actor, Dossier dossier) {
        ReportContent material = gather(actor, dossier);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (PdfDocument paper = PdfDocument.open(out, imprint(dossier))) {
            new VerdictSection(words, material).print(paper);
            new FactsSection(words, material).print(paper);
            new CausesSection(words, material).print(paper);
            new FindingsSection(words, material).print(paper);
            new RecordingsSection(words, material).print(paper);
            new TestsSection(words, material).print(paper);
            new ClaimSection(words, material).print(paper);
            new EvidenceSection(words, material).print(paper);
            new OriginSection(words, material).print(paper);
        }
        return out.toByteArray();
    }

    private ReportContent gather(Actor actor, Dossier dossier) {
        Map<UUID, Series> series = new HashMap<>();
        Map<UUID, Reading> readings = new HashMap<>();
        for (EvidenceItem item : dossier.evidence()) {
            if (item.isRecording()) {
                series.put(item.id(), recordings.read(actor, item.id(), new SeriesQuery(DRAWN, null, null, POINTS)));
            } else if (item.kind() != EvidenceKind.DOCUMENT) {
                archive.reading(item.id()).ifPresent(reading -> readings.put(item.id(), reading));
            }
        }
        return new ReportContent(dossier, series, readings);
    }

    private DocumentMetadata imprint(Dossier dossier) {
        String number = dossier.file().ref().number().value();
        String serial = dossier.file().ref().serial().value();
        String vin = dossier.file().ref().vin().value();
        return new DocumentMetadata(
                words.say("report.title", number),
                words.say("report.subject", serial, vin),
                words.say("report.head", number, serial),
                dossier.assessment()
                        .map(kept ->
                                words.say("report.foot", kept.assessment().rulebook(), words.moment(kept.assessedAt())))
                        .orElse(words.say("case.unjudged")),
                "en",
                dossier.changedAt(),
                identity(dossier));
    }

    /** Digest of what decides the report's text: facts, evidence, assessment, claim, trail and relatives. */
    private static Sha256 identity(Dossier dossier) {
        List<String> parts = new ArrayList<>();
        parts.add(dossier.file().ref().number() + " " + dossier.file().version());
        dossier.evidence().forEach(item -> parts.add(item.sha256().hex()));
        dossier.assessment()
                .ifPresent(kept -> parts.add(kept.assessedAt() + " " + kept.rulebookSha256() + " "
                        + Sha256.of(kept.body().getBytes(StandardCharsets.UTF_8))));
        dossier.failure().ifPresent(failure -> parts.add(failure.toString()));
        dossier.claim()
                .ifPresent(claim -> parts.add(claim.id() + " " + claim.version() + " " + claim.requestedItems() + " "
                        + claim.decision() + " " + dossier.basisChange()));
        dossier.trail().forEach(entry -> parts.add(entry.hash().hex()));
        parts.add(dossier.relatives().toString());
        parts.add(dossier.workshopNames().toString());
        return Sha256.of(String.join("\n", parts).getBytes(StandardCharsets.UTF_8));
    }
}
