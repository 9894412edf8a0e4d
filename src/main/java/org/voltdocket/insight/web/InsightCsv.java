package org.voltdocket.insight.web;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.StringWriter;
import java.math.BigDecimal;
import org.springframework.stereotype.Component;
import org.voltdocket.insight.TopicTable;
import org.voltdocket.ui.SpreadsheetCells;

/** A topic's table as CSV (RFC 4180): identifiers as column names, plain numbers, shares 0 to 1. */
@Component
class InsightCsv {

    String write(TopicTable table) {
        StringWriter out = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder()
                .lineDelimiter(de.siegmar.fastcsv.writer.LineDelimiter.CRLF)
                .build(out)) {
            csv.writeRecord(table.columns());
            for (TopicTable.Row row : table.rows()) {
                csv.writeRecord(row.cells().stream().map(InsightCsv::text).toList());
            }
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return out.toString();
    }

    /** A text that a spreadsheet would take for a formula gets an apostrophe before it. */
    static String text(TopicTable.Cell cell) {
        Object value = cell.value().orElse("");
        if (value instanceof BigDecimal amount) {
            return amount.toPlainString();
        }
        if (value instanceof Number) {
            return value.toString();
        }
        return SpreadsheetCells.harmless(value.toString());
    }
}
