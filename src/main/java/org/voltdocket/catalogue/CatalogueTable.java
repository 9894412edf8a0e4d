package org.voltdocket.catalogue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The tables of the catalogue: their columns in file and database, which share their names; the first ones are the key. */
enum CatalogueTable {
    SUPPLIERS(
            "suppliers",
            "supplier_entry",
            1,
            must("supplier", CatalogueCellParser.CODE),
            must("name", CatalogueCellParser.NAME)),
    TYPES(
            "types",
            "battery_type_entry",
            1,
            must("type", CatalogueCellParser.CODE),
            must("name", CatalogueCellParser.NAME),
            must("supplier", CatalogueCellParser.CODE),
            must("chemistry", CatalogueCellParser.CHEMISTRY),
            must("capacity_ah", CatalogueCellParser.CAPACITY),
            may("rated_cranking_a", CatalogueCellParser.CRANKING),
            may("cranking_standard", CatalogueCellParser.STANDARD),
            may("serial_prefix", CatalogueCellParser.PREFIX)),
    RANGES(
            "ranges",
            "produced_range",
            3,
            must("type", CatalogueCellParser.CODE),
            must("batch", CatalogueCellParser.BATCH),
            must("first_serial", CatalogueCellParser.SERIAL),
            must("last_serial", CatalogueCellParser.SERIAL),
            must("produced_on", CatalogueCellParser.DAY),
            must("count", CatalogueCellParser.COUNT)),
    SALES(
            "sales",
            "sold_month",
            3,
            must("type", CatalogueCellParser.CODE),
            must("batch", CatalogueCellParser.BATCH),
            must("month", CatalogueCellParser.MONTH),
            must("sold", CatalogueCellParser.SOLD));

    /** A cell under this name that is not empty ends the row of that key. */
    static final String WITHDRAWN = "withdrawn";

    final String id;
    final String relation;
    final int keys;
    final List<Column> columns;

    /** @param required whether a row without it is refused */
    record Column(String name, CatalogueCellParser cell, boolean required) {}

    CatalogueTable(String id, String relation, int keys, Column... columns) {
        this.id = id;
        this.relation = relation;
        this.keys = keys;
        this.columns = List.of(columns);
    }

    private static Column must(String name, CatalogueCellParser cell) {
        return new Column(name, cell, true);
    }

    private static Column may(String name, CatalogueCellParser cell) {
        return new Column(name, cell, false);
    }

    /** The table that a header of these names is for. Only one can be: each has a column that must be and no other has. */
    static Optional<CatalogueTable> of(Set<String> names) {
        return Arrays.stream(values())
                .filter(table ->
                        table.columns.stream().filter(Column::required).allMatch(c -> names.contains(c.name())))
                .filter(table -> table != SUPPLIERS || !names.contains("type"))
                .findFirst();
    }

    Column key(int i) {
        return columns.get(i);
    }
}
