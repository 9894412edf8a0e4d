package org.voltdocket.recovery;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.paper.DocumentMetadata;
import org.voltdocket.paper.PdfDocument;
import org.voltdocket.paper.Table;
import org.voltdocket.paper.TableCell;
import org.voltdocket.paper.TextStyle;
import org.voltdocket.recovery.SupplierRecovery.Line;
import org.voltdocket.ui.SpreadsheetCells;
import org.voltdocket.ui.TextFormatter;

/** Prints a list for the supplier, as PDF and as CSV. The same list gives the same bytes. */
@Component
class RecoveryListPrinter {

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

    private final TextFormatter words;

    RecoveryListPrinter(TextFormatter words) {
        this.words = words;
    }

    /** RFC 4180 in UTF-8; amounts with a decimal point, days by ISO 8601; no text that a spreadsheet takes for a formula. */
    byte[] csv(SupplierRecovery list) {
        StringWriter out = new StringWriter();
        try (CsvWriter csv =
                CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(out)) {
            csv.writeRecord(COLUMNS);
            for (Line line : list.lines()) {
                csv.writeRecord(
                        list.number(),
                        String.valueOf(line.position()),
                        SpreadsheetCells.harmless(list.supplier()),
                        line.number().value(),
                        SpreadsheetCells.harmless(line.serial().value()),
                        SpreadsheetCells.harmless(line.type()),
                        SpreadsheetCells.harmless(line.batch()),
                        line.decidedOn().toString(),
                        line.amount().text(),
                        line.amount().code());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString().getBytes(StandardCharsets.UTF_8);
    }

    byte[] pdf(SupplierRecovery list, Sha256 csv) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (PdfDocument paper = PdfDocument.open(out, imprint(list, csv))) {
            paper.title(
                    words.say("supplier-list.pdf.title", list.number()),
                    TableCell.of(
                            words.say("supplier-list.pdf.to", list.supplierName(), list.supplier()), TextStyle.BODY));
            paper.text(TableCell.of(
                    words.say(
                            "supplier-list.pdf.lead",
                            list.lines().size(),
                            list.total().toString(),
                            words.moment(list.madeAt())),
                    TextStyle.BODY));
            paper.table(table(list));
            paper.text(TableCell.of(
                    words.say("supplier-list.pdf.total", list.total().toString()), TextStyle.LEAD));
            paper.heading(words.say("supplier-list.pdf.answer"));
            paper.text(TableCell.of(words.say("supplier-list.pdf.answer.how"), TextStyle.BODY));
            paper.text(TableCell.of(words.say("supplier-list.pdf.same"), TextStyle.BODY)
                    .below(csv.hex(), TextStyle.MONO));
        }
        return out.toByteArray();
    }

    private Table table(SupplierRecovery list) {
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
                    TableCell.of(String.valueOf(line.position()), TextStyle.SMALL),
                    TableCell.of(line.serial().value(), TextStyle.MONO),
                    TableCell.of(line.type(), TextStyle.SMALL),
                    TableCell.of(line.batch(), TextStyle.SMALL),
                    TableCell.of(line.number().value(), TextStyle.MONO),
                    TableCell.of(line.decidedOn().toString(), TextStyle.SMALL),
                    TableCell.of(line.amount().text(), TextStyle.SMALL));
        }
        return table;
    }

    private DocumentMetadata imprint(SupplierRecovery list, Sha256 csv) {
        return new DocumentMetadata(
                words.say("supplier-list.pdf.title", list.number()),
                words.say("supplier-list.pdf.to", list.supplierName(), list.supplier()),
                words.say("supplier-list.pdf.title", list.number()),
                words.moment(list.madeAt()),
                "en",
                list.madeAt(),
                Sha256.of((list.number() + csv.hex()).getBytes(StandardCharsets.UTF_8)));
    }
}
