package org.voltdocket.paper;

import java.util.ArrayList;
import java.util.List;

/** A cell of a table, or any other text of several styles. */
public record Cell(List<Run> runs) {

    public Cell {
        runs = List.copyOf(runs);
    }

    /** A cell of one style. */
    public static Cell of(String text, Style style) {
        return new Cell(List.of(new Run(text, style)));
    }

    /** The same with more text on a new line; empty or null text adds nothing. */
    public Cell below(String text, Style style) {
        return text == null || text.isEmpty() ? this : then((runs.isEmpty() ? "" : "\n") + text, style);
    }

    /** The same with more text on the same line. */
    public Cell then(String text, Style style) {
        List<Run> more = new ArrayList<>(runs);
        more.add(new Run(text, style));
        return new Cell(more);
    }
}
