package org.voltdocket.dossier.report;

import java.util.Map;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.dossier.ReadingText;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.paper.Cell;
import org.voltdocket.paper.Paper;
import org.voltdocket.paper.Style;
import org.voltdocket.paper.Table;
import org.voltdocket.ui.Words;

/** What each test record says. */
final class TestsPart {

    private final Words words;
    private final Material material;

    TestsPart(Words words, Material material) {
        this.words = words;
        this.material = material;
    }

    void print(Paper paper) {
        if (material.readings().isEmpty()) {
            return;
        }
        paper.heading(words.say("report.tests"));
        for (EvidenceItem item : material.dossier().evidence()) {
            Reading reading = material.readings().get(item.id());
            if (reading != null) {
                print(paper, item, ReadingText.of(reading));
            }
        }
    }

    private void print(Paper paper, EvidenceItem item, Map<String, Object> members) {
        Table table = new Table(Table.text("", 3), Table.text("", 7));
        if (item.takenAt() != null) {
            row(table, words.say("evidence.taken"), words.moment(item.takenAt().toInstant()));
        }
        members.forEach((name, value) -> row(table, words.of("reading", name), words.member(value)));
        paper.subheading(
                Cell.of(words.of("kind", item.kind().id()), Style.SUBHEADING).then("  " + item.fileName(), Style.DIM));
        paper.table(table);
    }

    private static void row(Table table, String label, String value) {
        table.row(Cell.of(label, Style.SMALL_STRONG), Cell.of(value, Style.SMALL));
    }
}
