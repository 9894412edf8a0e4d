package org.voltdocket.dossier.report;

import java.util.Map;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.dossier.ReadingFields;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.paper.PdfDocument;
import org.voltdocket.paper.Table;
import org.voltdocket.paper.TableCell;
import org.voltdocket.paper.TextStyle;
import org.voltdocket.ui.TextFormatter;

/** The values of each test record. */
final class TestsSection {

    private final TextFormatter words;
    private final ReportContent material;

    TestsSection(TextFormatter words, ReportContent material) {
        this.words = words;
        this.material = material;
    }

    void print(PdfDocument paper) {
        if (material.readings().isEmpty()) {
            return;
        }
        paper.heading(words.say("report.tests"));
        for (EvidenceItem item : material.dossier().evidence()) {
            Reading reading = material.readings().get(item.id());
            if (reading != null) {
                print(paper, item, ReadingFields.of(reading));
            }
        }
    }

    private void print(PdfDocument paper, EvidenceItem item, Map<String, Object> members) {
        Table table = new Table(Table.text("", 3), Table.text("", 7));
        if (item.takenAt() != null) {
            row(table, words.say("evidence.taken"), words.moment(item.takenAt().toInstant()));
        }
        members.forEach((name, value) -> row(table, words.of("reading", name), words.member(value)));
        paper.subheading(TableCell.of(words.of("kind", item.kind().id()), TextStyle.SUBHEADING)
                .then("  " + item.fileName(), TextStyle.DIM));
        paper.table(table);
    }

    private static void row(Table table, String label, String value) {
        table.row(TableCell.of(label, TextStyle.SMALL_STRONG), TableCell.of(value, TextStyle.SMALL));
    }
}
