package org.voltdocket.dossier.report;

import java.util.List;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.casefile.RelatedCases;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.paper.PdfDocument;
import org.voltdocket.paper.Table;
import org.voltdocket.paper.TableCell;
import org.voltdocket.paper.TextStyle;
import org.voltdocket.ui.TextFormatter;

/** Every item of evidence with its digest, then the other cases of this battery and this vehicle. */
final class EvidenceSection {

    private final TextFormatter words;
    private final ReportContent material;

    EvidenceSection(TextFormatter words, ReportContent material) {
        this.words = words;
        this.material = material;
    }

    void print(PdfDocument paper) {
        List<EvidenceItem> items = material.dossier().evidence();
        paper.heading(words.say("evidence.title"));
        if (items.isEmpty()) {
            paper.text(TableCell.of(words.say("evidence.none"), TextStyle.BODY));
        }
        Table table = new Table(
                Table.text(words.say("evidence.file"), 3.2f),
                Table.text(words.say("evidence.received"), 2.2f),
                Table.text("SHA-256", 3.6f));
        for (EvidenceItem item : items) {
            table.row(file(item), received(item), TableCell.of(item.sha256().hex(), TextStyle.MONO));
        }
        paper.table(table);
        history(paper, material.dossier().relatives());
    }

    private TableCell file(EvidenceItem item) {
        String size = words.bytes(item.bytes());
        if (item.isRecording()) {
            size += ", " + words.say("upload.rows", item.rows(), words.clock(item.durationS()));
        }
        TableCell file = TableCell.of(item.fileName(), TextStyle.SMALL_STRONG)
                .below(words.of("kind", item.kind().id()) + ", " + size, TextStyle.SMALL)
                .below(item.note(), TextStyle.DIM);
        return item.ignored().isEmpty()
                ? file
                : file.below(words.say("evidence.ignored") + ": " + String.join(", ", item.ignored()), TextStyle.DIM);
    }

    private TableCell received(EvidenceItem item) {
        return TableCell.of(words.moment(item.receivedAt()), TextStyle.SMALL)
                .below(
                        words.say(
                                "report.received.by",
                                item.receivedBy(),
                                words.of("origin", item.origin().id())),
                        TextStyle.DIM);
    }

    private void history(PdfDocument paper, RelatedCases relatives) {
        paper.heading(words.say("relatives.title"));
        Table table = new Table(
                Table.text(words.say("list.case"), 2),
                Table.text(words.say("report.relation"), 3),
                Table.text(words.say("list.leaning"), 3));
        relatives.sameVehicle().forEach(line -> row(table, line, words.say("report.other-battery", serial(line))));
        relatives.sameBattery().forEach(line -> row(table, line, words.say("report.other-vehicle", vin(line))));
        paper.table(table);
        int elsewhere = relatives.sameVehicleElsewhere() + relatives.sameBatteryElsewhere();
        if (elsewhere > 0) {
            paper.text(TableCell.of(words.say("report.elsewhere", elsewhere), TextStyle.BODY));
        } else if (table.isEmpty()) {
            paper.text(TableCell.of(words.say("relatives.none"), TextStyle.BODY));
        }
    }

    private void row(Table table, CaseListItem line, String relation) {
        table.row(
                TableCell.of(line.ref().number().value(), TextStyle.MONO),
                TableCell.of(relation, TextStyle.SMALL),
                TableCell.of(
                        line.standing()
                                .map(standing ->
                                        words.of("leaning", standing.leaning().id()))
                                .orElse(words.say("list.unassessed")),
                        TextStyle.SMALL));
    }

    private static String serial(CaseListItem line) {
        return line.ref().serial().value();
    }

    private static String vin(CaseListItem line) {
        return line.ref().vin().value();
    }
}
