package org.voltdocket.dossier.report;

import java.util.List;
import org.voltdocket.casefile.CaseLine;
import org.voltdocket.casefile.Relatives;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.paper.Cell;
import org.voltdocket.paper.Paper;
import org.voltdocket.paper.Style;
import org.voltdocket.paper.Table;
import org.voltdocket.ui.Words;

/** Every item of evidence with its digest, then the other cases of this battery and this vehicle. */
final class EvidencePart {

    private final Words words;
    private final Material material;

    EvidencePart(Words words, Material material) {
        this.words = words;
        this.material = material;
    }

    void print(Paper paper) {
        List<EvidenceItem> items = material.dossier().evidence();
        paper.heading(words.say("evidence.title"));
        if (items.isEmpty()) {
            paper.text(Cell.of(words.say("evidence.none"), Style.BODY));
        }
        Table table = new Table(
                Table.text(words.say("evidence.file"), 3.2f),
                Table.text(words.say("evidence.received"), 2.2f),
                Table.text("SHA-256", 3.6f));
        for (EvidenceItem item : items) {
            table.row(file(item), received(item), Cell.of(item.sha256().hex(), Style.MONO));
        }
        paper.table(table);
        history(paper, material.dossier().relatives());
    }

    private Cell file(EvidenceItem item) {
        String size = words.bytes(item.bytes());
        if (item.isRecording()) {
            size += ", " + words.say("upload.rows", item.rows(), words.clock(item.durationS()));
        }
        Cell file = Cell.of(item.fileName(), Style.SMALL_STRONG)
                .below(words.of("kind", item.kind().id()) + ", " + size, Style.SMALL)
                .below(item.note(), Style.DIM);
        return item.ignored().isEmpty()
                ? file
                : file.below(words.say("evidence.ignored") + ": " + String.join(", ", item.ignored()), Style.DIM);
    }

    private Cell received(EvidenceItem item) {
        return Cell.of(words.moment(item.receivedAt()), Style.SMALL)
                .below(
                        words.say(
                                "report.received.by",
                                item.receivedBy(),
                                words.of("origin", item.origin().id())),
                        Style.DIM);
    }

    private void history(Paper paper, Relatives relatives) {
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
            paper.text(Cell.of(words.say("report.elsewhere", elsewhere), Style.BODY));
        } else if (table.isEmpty()) {
            paper.text(Cell.of(words.say("relatives.none"), Style.BODY));
        }
    }

    private void row(Table table, CaseLine line, String relation) {
        table.row(
                Cell.of(line.ref().number().value(), Style.MONO),
                Cell.of(relation, Style.SMALL),
                Cell.of(
                        line.standing()
                                .map(standing ->
                                        words.of("leaning", standing.leaning().id()))
                                .orElse(words.say("list.unassessed")),
                        Style.SMALL));
    }

    private static String serial(CaseLine line) {
        return line.ref().serial().value();
    }

    private static String vin(CaseLine line) {
        return line.ref().vin().value();
    }
}
