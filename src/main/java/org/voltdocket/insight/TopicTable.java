package org.voltdocket.insight;

import java.util.List;
import java.util.Optional;

/**
 * The table of a topic, shown on the page and written as CSV.
 *
 * @param columns identifiers, with their words in the message bundle
 * @param rows each with as many cells as there are columns
 */
public record TopicTable(List<String> columns, List<Row> rows) {

    public TopicTable {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        for (Row row : rows) {
            if (row.cells().size() != columns.size()) {
                throw new IllegalArgumentException("a row of " + row.cells().size() + " under " + columns.size());
            }
        }
    }

    /**
     * A row.
     *
     * @param key identifies the cases behind the row
     * @param marked whether the row is highlighted
     */
    public record Row(Optional<String> key, boolean marked, List<Cell> cells) {

        public static Row of(String key, boolean marked, Cell... cells) {
            return new Row(Optional.of(key), marked, List.of(cells));
        }
    }

    /** How a value is formatted. */
    public enum Kind {
        TEXT,
        COUNT,
        /** 0 to 1, in per cent. */
        SHARE,
        NUMBER,
        MONEY,
        /** An identifier with words of its own in the group named. */
        WORD
    }

    /**
     * A cell.
     *
     * @param value text or number; absent where it is not known
     * @param group message group of a word
     */
    public record Cell(Kind kind, Optional<Object> value, String group) {

        public static Cell text(String text) {
            return new Cell(Kind.TEXT, Optional.of(text), "");
        }

        public static Cell count(long count) {
            return new Cell(Kind.COUNT, Optional.of(count), "");
        }

        public static Cell share(double share) {
            return new Cell(Kind.SHARE, Optional.of(share), "");
        }

        public static Cell number(double number) {
            return new Cell(Kind.NUMBER, Optional.of(number), "");
        }

        public static Cell money(java.math.BigDecimal amount) {
            return new Cell(Kind.MONEY, Optional.of(amount), "");
        }

        public static Cell word(String group, String id) {
            return new Cell(Kind.WORD, Optional.of(id), group);
        }

        public static Cell unknown(Kind kind) {
            return new Cell(kind, Optional.empty(), "");
        }
    }
}
