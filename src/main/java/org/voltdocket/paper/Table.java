package org.voltdocket.paper;

import java.util.ArrayList;
import java.util.List;

/** A table: columns, then rows of as many cells. The first cell of a row is its header. */
public final class Table {

    final List<Column> columns;
    final List<List<TableCell>> rows = new ArrayList<>();

    /**
     * A column.
     *
     * @param title empty in every column for a table without a head
     * @param share of the width, relative to the other columns
     * @param right whether it is set flush right, as numbers are
     */
    public record Column(String title, float share, boolean right) {}

    public Table(Column... columns) {
        this.columns = List.of(columns);
    }

    /** A column set flush left. */
    public static Column text(String title, float share) {
        return new Column(title, share, false);
    }

    /** A column of numbers. */
    public static Column number(String title, float share) {
        return new Column(title, share, true);
    }

    /**
     * Adds a row.
     *
     * @throws IllegalArgumentException if it has more or fewer cells than there are columns
     */
    public Table row(TableCell... cells) {
        if (cells.length != columns.size()) {
            throw new IllegalArgumentException(cells.length + " cells for " + columns.size() + " columns");
        }
        rows.add(List.of(cells));
        return this;
    }

    /** Whether it has no row yet. */
    public boolean isEmpty() {
        return rows.isEmpty();
    }

    boolean headed() {
        return columns.stream().anyMatch(column -> !column.title().isEmpty());
    }
}
