package org.voltdocket.dossier.report;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.paper.PdfDocument;
import org.voltdocket.paper.TableCell;
import org.voltdocket.paper.TextStyle;
import org.voltdocket.ui.TextFormatter;

/** What a reader needs first: the pair, the verdict, what to do next and with what care, and what is missing. */
final class VerdictSection {

    private static final List<String> CARE = List.of("gas", "acid", "short", "damaged", "engine", "law");

    private final TextFormatter words;
    private final ReportContent material;

    VerdictSection(TextFormatter words, ReportContent material) {
        this.words = words;
        this.material = material;
    }

    void print(PdfDocument paper) {
        CaseReference ref = material.dossier().file().ref();
        paper.title(
                words.say("report.title", ref.number().value()),
                TableCell.of(words.say("report.battery") + " ", TextStyle.BODY)
                        .then(ref.serial().value(), TextStyle.MONO_LARGE)
                        .then(" " + words.say("report.vehicle") + " ", TextStyle.BODY)
                        .then(ref.vin().value(), TextStyle.MONO_LARGE));
        material.dossier()
                .failure()
                .ifPresent(failure -> paper.caution(List.of(
                        TableCell.of(words.say("case.failure"), TextStyle.STRONG),
                        TableCell.of(failure.reason() + " " + words.say("report.older"), TextStyle.BODY))));
        material.dossier()
                .assessment()
                .ifPresentOrElse(
                        kept -> judged(paper, kept),
                        () -> paper.box(List.of(
                                TableCell.of(words.say("case.unjudged"), TextStyle.LEAD),
                                TableCell.of(words.say("report.unjudged"), TextStyle.BODY))));
        care(paper);
    }

    private void judged(PdfDocument paper, StoredAssessment kept) {
        Assessment a = kept.assessment();
        Assessment.RankedCause first = a.causes().get(0);
        paper.box(List.of(
                TableCell.of(a.said(), TextStyle.LEAD),
                fact("list.leaning", words.of("leaning", a.leaning().id())),
                fact(
                        "list.verdict",
                        words.of("verdict", a.batteryVerdict().id()) + ": "
                                + words.of("battery-reason", a.batteryReason().id())),
                fact(
                        "list.cause",
                        words.of("cause-name", first.cause().id()) + ", " + words.percent(first.probability())),
                fact(
                        "case.judged",
                        words.moment(kept.assessedAt()) + ", " + words.say("case.rulebook", a.rulebook()))));
        if (!a.nextSteps().isEmpty()) {
            paper.heading(words.say("next.title"));
            paper.list(a.nextSteps(), true);
        }
        if (!a.missing().isEmpty()) {
            paper.heading(words.say("missing.title"));
            paper.list(a.missing().stream().map(this::missing).toList(), false);
        }
    }

    private TableCell fact(String label, String value) {
        return TableCell.of(words.say(label) + ": ", TextStyle.STRONG).then(value, TextStyle.BODY);
    }

    private String missing(String id) {
        return words.knows("kind", id) ? words.of("kind", id) : words.say("report.fact", words.of("fact", id));
    }

    private void care(PdfDocument paper) {
        List<TableCell> care = new ArrayList<>();
        care.add(TableCell.of(words.say("caution.title"), TextStyle.STRONG));
        CARE.forEach(id -> care.add(TableCell.of(words.of("caution", id), TextStyle.SMALL)));
        paper.caution(care);
    }
}
