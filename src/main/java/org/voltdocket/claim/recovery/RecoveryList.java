package org.voltdocket.claim.recovery;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.recovery.Recovery.Line;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.paper.Cell;
import org.voltdocket.paper.Imprint;
import org.voltdocket.paper.Paper;
import org.voltdocket.paper.Style;
import org.voltdocket.paper.Table;
import org.voltdocket.ui.Spreadsheet;
import org.voltdocket.ui.Words;

/** Prints a list for the supplier, as PDF and as CSV. The same list gives the same bytes. */
@Component
class RecoveryList {

    private static final List<String> COLUMNS = List.of(
            "list",
            "position",
            "supplier",
            "case",
            "battery_serial",
            "type",
            "batch",
            "approved_on",
            "amount",
            "currency");

    private final Words words;

    RecoveryList(Words words) {
        this.words = words;
    }

    /** RFC 4180 in UTF-8; amounts with a decimal point, days by ISO 8601; no text that a spreadsheet takes for a formula. */
    byte[] csv(Recovery list) {
        StringWriter out = new StringWriter();
        try (CsvWriter csv =
                CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(out)) {
            csv.writeRecord(COLUMNS);
            for (Line line : list.lines()) {
                csv.writeRecord(
                        list.number(),
                        String.valueOf(line.position()),
                        Spreadsheet.harmless(list.supplier()),
                        line.number().value(),
                        Spreadsheet.harmless(line.serial().value()),
                        Spreadsheet.harmless(line.type()),
                        Spreadsheet.harmless(line.batch()),
                        line.decidedOn().toString(),
                        line.amount().text(),
                        line.amount().code());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString().getBytes(StandardCharsets.UTF_8);
    }

    byte[] pdf(Recovery list, Sha256 csv) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Paper paper = Paper.open(out, imprint(list, csv))) {
            paper.title(
                    words.say("supplier-list.pdf.title", list.number()),
                    Cell.of(words.say("supplier-list.pdf.to", list.supplierName(), list.supplier()), Style.BODY));
            paper.text(Cell.of(
                    words.say(
                            "supplier-list.pdf.lead",
                            list.lines().size(),
                            list.total().toString(),
                            words.moment(list.madeAt())),
                    Style.BODY));
            paper.table(table(list));
            paper.text(Cell.of(words.say("supplier-list.pdf.total", list.total().toString()), Style.LEAD));
            paper.heading(words.say("supplier-list.pdf.answer"));
            paper.text(Cell.of(words.say("supplier-list.pdf.answer.how"), Style.BODY));
            paper.text(Cell.of(words.say("supplier-list.pdf.same"), Style.BODY).below(csv.hex(), Style.MONO));
        }
        return out.toByteArray();
    }

    private Table table(Recovery list) {
        Table table = new Table(
                Table.number(words.say("supplier-list.position"), 0.5f),
                Table.text(words.say("supplier-list.serial"), 2.4f),
                Table.text(words.say("supplier-list.type"), 1.6f),
                Table.text(words.say("supplier-list.batch"), 1.6f),
                Table.text(words.say("supplier-list.case"), 1.5f),
                Table.text(words.say("supplier-list.approved"), 1.3f),
                Table.number(list.total().code(), 1.1f));
        for (Line line : list.lines()) {
            table.row(
                    Cell.of(String.valueOf(line.position()), Style.SMALL),
                    Cell.of(line.serial().value(), Style.MONO),
                    Cell.of(line.type(), Style.SMALL),
                    Cell.of(line.batch(), Style.SMALL),
                    Cell.of(line.number().value(), Style.MONO),
                    Cell.of(line.decidedOn().toString(), Style.SMALL),
                    Cell.of(line.amount().text(), Style.SMALL));
        }
        return table;
    }

    private Imprint imprint(Recovery list, Sha256 csv) {
        return new Imprint(
                words.say("supplier-list.pdf.title", list.number()),
                words.say("supplier-list.pdf.to", list.supplierName(), list.supplier()),
                words.say("supplier-list.pdf.title", list.number()),
                words.moment(list.madeAt()),
                "en",
                list.madeAt(),
                Sha256.of((list.number() + csv.hex()).getBytes(StandardCharsets.UTF_8)));
    }
}
