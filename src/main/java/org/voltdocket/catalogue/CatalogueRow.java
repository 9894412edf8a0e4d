package org.voltdocket.catalogue;

import java.util.List;

/**
 * A line of a catalogue file.
 *
 * @param cells where each column of the table begins on the line, in characters from 1
 * @param values by the columns of the table; null for an empty cell that may be empty
 * @param withdrawn whether it ends the row of its key; only the key is read then
 */
record CatalogueRow(long line, List<Integer> cells, List<Object> values, boolean withdrawn) {

    List<Object> key(CatalogueTable table) {
        return values.subList(0, table.keys);
    }

    FileError error(int column, String message) {
        return new FileError(line, cells.get(column), message);
    }
}
