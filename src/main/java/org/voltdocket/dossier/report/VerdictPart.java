package org.voltdocket.dossier.report;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.assessment.KeptAssessment;
import org.voltdocket.casefile.CaseRef;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.paper.Cell;
import org.voltdocket.paper.Paper;
import org.voltdocket.paper.Style;
import org.voltdocket.ui.Words;

/** What a reader needs first: the pair, the verdict, what to do next and with what care, and what is missing. */
final class VerdictPart {

    private static final List<String> CARE = List.of("gas", "acid", "short", "damaged", "engine", "law");

    private final Words words;
    private final Material material;

    VerdictPart(Words words, Material material) {
        this.words = words;
        this.material = material;
    }

    void print(Paper paper) {
        CaseRef ref = material.dossier().file().ref();
        paper.title(
                words.say("report.title", ref.number().value()),
                Cell.of(words.say("report.battery") + " ", Style.BODY)
                        .then(ref.serial().value(), Style.MONO_LARGE)
                        .then(" " + words.say("report.vehicle") + " ", Style.BODY)
                        .then(ref.vin().value(), Style.MONO_LARGE));
        material.dossier()
                .failure()
                .ifPresent(failure -> paper.caution(List.of(
                        Cell.of(words.say("case.failure"), Style.STRONG),
                        Cell.of(failure.reason() + " " + words.say("report.older"), Style.BODY))));
        material.dossier()
                .assessment()
                .ifPresentOrElse(
                        kept -> judged(paper, kept),
                        () -> paper.box(List.of(
                                Cell.of(words.say("case.unjudged"), Style.LEAD),
                                Cell.of(words.say("report.unjudged"), Style.BODY))));
        care(paper);
    }

    private void judged(Paper paper, KeptAssessment kept) {
        Assessment a = kept.assessment();
        Assessment.RankedCause first = a.causes().get(0);
        paper.box(List.of(
                Cell.of(a.said(), Style.LEAD),
                fact("list.leaning", words.of("leaning", a.leaning().id())),
                fact("list.verdict", words.of("verdict", a.batteryVerdict().id())),
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

    private Cell fact(String label, String value) {
        return Cell.of(words.say(label) + ": ", Style.STRONG).then(value, Style.BODY);
    }

    private String missing(String id) {
        return words.knows("kind", id) ? words.of("kind", id) : words.say("report.fact", words.of("fact", id));
    }

    private void care(Paper paper) {
        List<Cell> care = new ArrayList<>();
        care.add(Cell.of(words.say("caution.title"), Style.STRONG));
        CARE.forEach(id -> care.add(Cell.of(words.of("caution", id), Style.SMALL)));
        paper.caution(care);
    }
}
