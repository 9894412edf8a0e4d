package org.voltdocket.dossier.report;

import java.util.List;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.paper.PdfDocument;
import org.voltdocket.paper.Table;
import org.voltdocket.paper.TableCell;
import org.voltdocket.paper.TextStyle;
import org.voltdocket.trail.TrailEntry;
import org.voltdocket.ui.TextFormatter;

/** What the report rests on, so that it can be checked: rule book, digests, and the trail with its last hash. */
final class OriginSection {

    private final TextFormatter words;
    private final ReportContent material;

    OriginSection(TextFormatter words, ReportContent material) {
        this.words = words;
        this.material = material;
    }

    void print(PdfDocument paper) {
        paper.heading(words.say("report.origin"));
        material.dossier().assessment().ifPresent(kept -> paper.table(judged(kept)));
        List<TrailEntry> trail = material.dossier().trail();
        Table table = new Table(
                Table.text(words.say("trail.at"), 2.2f),
                Table.text(words.say("trail.who"), 1.5f),
                Table.text(words.say("trail.act"), 2),
                Table.text(words.say("trail.details"), 5));
        for (TrailEntry entry : trail) {
            table.row(
                    TableCell.of(words.moment(entry.at()), TextStyle.SMALL),
                    TableCell.of(entry.actor().user(), TextStyle.SMALL),
                    TableCell.of(words.of("act", entry.act()), TextStyle.SMALL),
                    TableCell.of(words.details(entry.details()), TextStyle.DIM));
        }
        paper.heading(words.say("trail.title"));
        paper.text(TableCell.of(words.say("trail.lead"), TextStyle.DIM));
        paper.table(table);
        if (!trail.isEmpty()) {
            TrailEntry last = trail.get(trail.size() - 1);
            paper.text(TableCell.of(
                            words.say("report.trail.last", String.valueOf(last.position())) + " ", TextStyle.SMALL)
                    .then(last.hash().hex(), TextStyle.MONO));
        }
        paper.text(TableCell.of(words.say("frame.foot"), TextStyle.SMALL));
    }

    private Table judged(StoredAssessment kept) {
        Table table = new Table(Table.text("", 3), Table.text("", 7));
        row(table, "report.edition", kept.assessment().rulebook(), TextStyle.SMALL);
        row(table, "report.rulebook-digest", kept.rulebookSha256().hex(), TextStyle.MONO);
        row(table, "case.judged", words.moment(kept.assessedAt()) + " (" + kept.assessedAt() + ")", TextStyle.SMALL);
        row(table, "report.assessment", kept.id().toString(), TextStyle.MONO);
        row(table, "report.input-digest", kept.inputSha256().hex(), TextStyle.MONO);
        return table;
    }

    private void row(Table table, String label, String value, TextStyle style) {
        table.row(TableCell.of(words.say(label), TextStyle.SMALL_STRONG), TableCell.of(value, style));
    }
}
