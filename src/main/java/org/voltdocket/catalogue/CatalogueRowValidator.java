package org.voltdocket.catalogue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;

/** What must hold between the cells of a row, and between a row and the rest of the catalogue. */
@Component
class CatalogueRowValidator {

    private final CatalogueRepository store;

    CatalogueRowValidator(CatalogueRepository store) {
        this.store = store;
    }

    /** What is wrong with a row that is to be added, if anything; the rows that it takes the place of have ended. */
    Optional<FileError> wrong(CatalogueTable table, CatalogueRow row, LocalDate today) {
        return switch (table) {
            case SUPPLIERS -> Optional.empty();
            case TYPES -> type(row);
            case RANGES -> range(row, today);
            case SALES -> sale(row, today);
        };
    }

    /** What forbids to withdraw a row, if anything. */
    Optional<FileError> inUse(CatalogueTable table, CatalogueRow row) {
        Object code = row.values().get(0);
        if (table == CatalogueTable.SUPPLIERS && store.stands(CatalogueTable.TYPES, "supplier", code)) {
            return Optional.of(row.error(0, "supplier " + code + " has battery types; withdraw those first"));
        }
        if (table == CatalogueTable.TYPES && store.stands(CatalogueTable.RANGES, "type", code)) {
            return Optional.of(row.error(0, "type " + code + " has production ranges; withdraw those first"));
        }
        return Optional.empty();
    }

    private Optional<FileError> type(CatalogueRow row) {
        List<Object> values = row.values();
        if (!store.stands(CatalogueTable.SUPPLIERS, "supplier", values.get(2))) {
            return Optional.of(row.error(2, "there is no supplier " + values.get(2) + "; import the suppliers first"));
        }
        if ((values.get(5) == null) != (values.get(6) == null)) {
            return Optional.of(row.error(5, "a rated cranking current and its standard must be given together"));
        }
        return Optional.empty();
    }

    private Optional<FileError> range(CatalogueRow row, LocalDate today) {
        List<Object> values = row.values();
        if (!store.stands(CatalogueTable.TYPES, "type", values.get(0))) {
            return Optional.of(noType(row));
        }
        SerialShape first = CatalogueRepository.shape(values.get(2));
        SerialShape last = CatalogueRepository.shape(values.get(3));
        if (!first.like(last) || first.number().compareTo(last.number()) > 0) {
            return Optional.of(row.error(
                    3,
                    "last_serial begins like first_serial, ends in as many digits, and does not come before it; read '"
                            + values.get(2) + "' and '" + values.get(3) + "'"));
        }
        BigDecimal room = last.number().subtract(first.number()).add(BigDecimal.ONE);
        if (new BigDecimal((Integer) values.get(5)).compareTo(room) > 0) {
            return Optional.of(
                    row.error(5, "the range numbers " + room.toPlainString() + " batteries; read " + values.get(5)));
        }
        if (((LocalDate) values.get(4)).isAfter(today)) {
            return Optional.of(row.error(4, "produced_on is in the future: " + values.get(4)));
        }
        return store.overlap(first, last)
                .map(other -> row.error(2, "a serial belongs to one batch, and some of these belong to " + other));
    }

    private Optional<FileError> sale(CatalogueRow row, LocalDate today) {
        List<Object> values = row.values();
        if (!store.stands(CatalogueTable.TYPES, "type", values.get(0))) {
            return Optional.of(noType(row));
        }
        Optional<LocalDate> produced = store.producedFrom(values.get(0), values.get(1));
        if (produced.isEmpty()) {
            return Optional.of(row.error(
                    1,
                    "type " + values.get(0) + " has no batch " + values.get(1)
                            + "; import its production ranges first"));
        }
        LocalDate month = (LocalDate) values.get(2);
        if (month.isAfter(today) || month.isBefore(produced.get().withDayOfMonth(1))) {
            return Optional.of(row.error(
                    2, "nothing is sold in the future or before it is made, on " + produced.get() + "; read " + month));
        }
        return Optional.empty();
    }

    private static FileError noType(CatalogueRow row) {
        return row.error(0, "there is no type " + row.values().get(0) + "; import the types first");
    }
}
