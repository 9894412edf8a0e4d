package org.voltdocket.dossier.report;

import java.util.Map;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.web.FactFields;
import org.voltdocket.kernel.Vin;
import org.voltdocket.paper.PdfDocument;
import org.voltdocket.paper.Table;
import org.voltdocket.paper.TableCell;
import org.voltdocket.paper.TextStyle;
import org.voltdocket.ui.TextFormatter;

/** Facts of battery and vehicle. */
final class FactsSection {

    private final TextFormatter words;
    private final ReportContent material;

    FactsSection(TextFormatter words, ReportContent material) {
        this.words = words;
        this.material = material;
    }

    void print(PdfDocument paper) {
        CaseFacts file = material.dossier().file();
        Table table = new Table(Table.text("", 3), Table.text("", 7));
        row(table, "fact.batterySerial", file.ref().serial().value(), TextStyle.MONO);
        row(table, "fact.vin", file.ref().vin().value(), TextStyle.MONO);
        row(table, "report.check", check(file.ref().vin()), TextStyle.SMALL);
        Map<String, String> known = FactFields.values(file.facts());
        for (FactFields.Field field : FactFields.ALL) {
            String value = known.get(field.name());
            if (value != null) {
                String said = field.words().isEmpty() ? value : words.of(field.words(), value);
                row(
                        table,
                        "fact." + field.name(),
                        said + (field.unit().isEmpty() ? "" : " " + field.unit()),
                        TextStyle.SMALL);
            }
        }
        row(
                table,
                "report.opened",
                words.say("report.opened.by", words.moment(file.openedAt()), file.openedBy()),
                TextStyle.SMALL);
        row(
                table,
                "list.workshop",
                String.join(", ", material.dossier().workshopNames().values()),
                TextStyle.SMALL);
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

    private void row(Table table, String label, String value, TextStyle style) {
        if (!value.isEmpty()) {
            table.row(TableCell.of(words.say(label), TextStyle.SMALL_STRONG), TableCell.of(value, style));
        }
    }
}
