package org.voltdocket.dossier.report;

import java.util.Map;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.web.FactFields;
import org.voltdocket.kernel.Vin;
import org.voltdocket.paper.Cell;
import org.voltdocket.paper.Paper;
import org.voltdocket.paper.Style;
import org.voltdocket.paper.Table;
import org.voltdocket.ui.Words;

/** What is known of battery and vehicle beside the evidence. */
final class FactsPart {

    private final Words words;
    private final Material material;

    FactsPart(Words words, Material material) {
        this.words = words;
        this.material = material;
    }

    void print(Paper paper) {
        CaseFacts file = material.dossier().file();
        Table table = new Table(Table.text("", 3), Table.text("", 7));
        row(table, "fact.batterySerial", file.ref().serial().value(), Style.MONO);
        row(table, "fact.vin", file.ref().vin().value(), Style.MONO);
        row(table, "report.check", check(file.ref().vin()), Style.SMALL);
        Map<String, String> known = FactFields.values(file.facts());
        for (FactFields.Field field : FactFields.ALL) {
            String value = known.get(field.name());
            if (value != null) {
                String said = field.words().isEmpty() ? value : words.of(field.words(), value);
                row(
                        table,
                        "fact." + field.name(),
                        said + (field.unit().isEmpty() ? "" : " " + field.unit()),
                        Style.SMALL);
            }
        }
        row(
                table,
                "report.opened",
                words.say("report.opened.by", words.moment(file.openedAt()), file.openedBy()),
                Style.SMALL);
        row(
                table,
                "list.workshop",
                String.join(", ", material.dossier().workshopNames().values()),
                Style.SMALL);
        paper.heading(words.say("facts.title"));
        paper.table(table);
    }

    private String check(Vin vin) {
        String fits = words.say(vin.checkDigitFits() ? "history.check.fits" : "history.check.not");
        return vin.modelYear().isPresent()
                ? fits + "; "
                        + words.say(
                                "history.year", String.valueOf(vin.modelYear().getAsInt()))
                : fits;
    }

    private void row(Table table, String label, String value, Style style) {
        if (!value.isEmpty()) {
            table.row(Cell.of(words.say(label), Style.SMALL_STRONG), Cell.of(value, style));
        }
    }
}
