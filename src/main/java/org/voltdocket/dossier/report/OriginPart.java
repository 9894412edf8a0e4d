package org.voltdocket.dossier.report;

import java.util.List;
import org.voltdocket.assessment.KeptAssessment;
import org.voltdocket.paper.Cell;
import org.voltdocket.paper.Paper;
import org.voltdocket.paper.Style;
import org.voltdocket.paper.Table;
import org.voltdocket.trail.TrailEntry;
import org.voltdocket.ui.Words;

/** What the report rests on, so that it can be checked: rule book, digests, and the trail with its last hash. */
final class OriginPart {

    private final Words words;
    private final Material material;

    OriginPart(Words words, Material material) {
        this.words = words;
        this.material = material;
    }

    void print(Paper paper) {
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
                    Cell.of(words.moment(entry.at()), Style.SMALL),
                    Cell.of(entry.actor().user(), Style.SMALL),
                    Cell.of(words.of("act", entry.act()), Style.SMALL),
                    Cell.of(words.details(entry.details()), Style.DIM));
        }
        paper.heading(words.say("trail.title"));
        paper.text(Cell.of(words.say("trail.lead"), Style.DIM));
        paper.table(table);
        if (!trail.isEmpty()) {
            TrailEntry last = trail.get(trail.size() - 1);
            paper.text(Cell.of(words.say("report.trail.last", String.valueOf(last.position())) + " ", Style.SMALL)
                    .then(last.hash().hex(), Style.MONO));
        }
        paper.text(Cell.of(words.say("frame.foot"), Style.SMALL));
    }

    private Table judged(KeptAssessment kept) {
        Table table = new Table(Table.text("", 3), Table.text("", 7));
        row(table, "report.edition", kept.assessment().rulebook(), Style.SMALL);
        row(table, "report.rulebook-digest", kept.rulebookSha256().hex(), Style.MONO);
        row(table, "case.judged", words.moment(kept.assessedAt()) + " (" + kept.assessedAt() + ")", Style.SMALL);
        row(table, "report.assessment", kept.id().toString(), Style.MONO);
        row(table, "report.input-digest", kept.inputSha256().hex(), Style.MONO);
        return table;
    }

    private void row(Table table, String label, String value, Style style) {
        table.row(Cell.of(words.say(label), Style.SMALL_STRONG), Cell.of(value, style));
    }
}
