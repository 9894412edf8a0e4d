package org.voltdocket.desk.web;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import jakarta.servlet.http.HttpServletResponse;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import org.springframework.stereotype.Component;
import org.voltdocket.desk.DeskFilter;
import org.voltdocket.desk.DeskItem;
import org.voltdocket.desk.DeskService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.ui.SpreadsheetCells;

/**
 * What the desk's filter shows as CSV (RFC 4180), all of it, line by line as it is read. Text that a spreadsheet would take
 * for a formula gets an apostrophe before it.
 */
@Component
class DeskCsv {

    private static final String[] HEAD = {
        "number",
        "batterySerial",
        "vin",
        "workshop",
        "state",
        "leaning",
        "firstCause",
        "probability",
        "amount",
        "currency",
        "waitingSince",
        "dueOn",
        "takenBy"
    };

    private final DeskService desk;

    DeskCsv(DeskService desk) {
        this.desk = desk;
    }

    void write(Actor actor, DeskFilter filter, HttpServletResponse response) throws IOException {
        response.setContentType("text/csv;charset=UTF-8;header=present");
        response.setHeader("Content-Disposition", "attachment; filename=\"claims.csv\"");
        BufferedWriter out =
                new BufferedWriter(new OutputStreamWriter(response.getOutputStream(), StandardCharsets.UTF_8));
        try (CsvWriter csv =
                CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(out)) {
            csv.writeRecord(HEAD);
            desk.each(actor, filter, line -> csv.writeRecord(cells(line)));
        }
    }

    private static String[] cells(DeskItem line) {
        String[] cells = {
            line.number(),
            line.batterySerial(),
            line.vin(),
            line.workshop(),
            line.state(),
            line.leaning(),
            line.firstCause(),
            line.probability() == null ? null : line.probability().toString(),
            line.amount().toPlainString(),
            line.currency(),
            line.waitingSince().toString(),
            line.dueOn() == null ? null : line.dueOn().toString(),
            line.takenBy()
        };
        for (int i = 0; i < cells.length; i++) {
            // serials may begin with a hyphen, and names of workshops with anything
            cells[i] = SpreadsheetCells.harmless(cells[i]);
        }
        return cells;
    }
}
