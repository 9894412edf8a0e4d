package org.voltdocket.paper;

import java.util.ArrayList;
import java.util.List;

/** A cell of a table, or any other text of several styles. */
public record TableCell(List<TextRun> runs) {

    public TableCell {
        runs = List.copyOf(runs);
    }

    /** A cell of one style. */
    public static TableCell of(String text, TextStyle style) {
        return new TableCell(List.of(new TextRun(text, style)));
    }

    /** The same with more text on a new line; empty or null text adds nothing. */
    public TableCell below(String text, TextStyle style) {
        return text == null || text.isEmpty() ? this : then((runs.isEmpty() ? "" : "\n") + text, style);
    }

    /** The same with more text on the same line. */
    public TableCell then(String text, TextStyle style) {
        List<TextRun> more = new ArrayList<>(runs);
        more.add(new TextRun(text, style));
        return new TableCell(more);
    }
}
