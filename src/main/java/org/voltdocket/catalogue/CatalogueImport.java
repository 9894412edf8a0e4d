package org.voltdocket.catalogue;

import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.voltdocket.kernel.Actor;

/** One file on its way into the tables of the catalogue. */
final class CatalogueImport {

    /** Corrections that a trail entry spells out; all of them stand in the tables, with what stood before. */
    private static final int TOLD = 100;

    private final Actor actor;
    private final CatalogueTable table;
    private final List<CatalogueRow> rows;
    private final CatalogueRepository store;
    private final CatalogueRowValidator rules;
    private final ZonedDateTime now;
    private final Instant at;
    private final List<CatalogueRow> fresh = new ArrayList<>();
    private final List<FileError> errors = new ArrayList<>();
    private final Map<String, Object> changes = new LinkedHashMap<>();
    private int added;
    private int corrected;
    private int unchanged;
    private int withdrawn;

    CatalogueImport(
            Actor actor,
            CatalogueFile file,
            CatalogueRepository store,
            CatalogueRowValidator rules,
            ZonedDateTime now) {
        this.actor = actor;
        this.table = file.table();
        this.rows = file.rows();
        this.store = store;
        this.rules = rules;
        this.now = now;
        this.at = now.toInstant();
    }

    /** @throws org.voltdocket.kernel.RequestException (422) if a row cannot be; the caller's transaction takes back what was done before it */
    void take() {
        endOld();
        addNew();
        if (!errors.isEmpty()) {
            throw FileError.refused(errors);
        }
    }

    ImportResult imported() {
        return new ImportResult(table.id, added, corrected, unchanged, withdrawn);
    }

    /** Tells the trail. */
    void tell(Map<String, Object> details) {
        details.put("catalogue.added", added);
        details.put("catalogue.corrected", corrected);
        details.put("catalogue.unchanged", unchanged);
        details.put("catalogue.withdrawn", withdrawn);
        details.putAll(changes);
    }

    /** Ends what the file says otherwise, all of it first: two rows of a file may change places. */
    private void endOld() {
        Set<List<Object>> keys = new HashSet<>();
        for (CatalogueRow row : rows) {
            if (!keys.add(row.key(table))) {
                errors.add(row.error(0, "the file already has a row with this key: " + row.key(table)));
                continue;
            }
            Optional<CatalogueRepository.Standing> old = store.standing(table, row.key(table));
            if (row.withdrawn()) {
                withdraw(row, old);
            } else if (old.isPresent() && old.get().values().equals(row.values())) {
                unchanged++;
            } else {
                fresh.add(row);
                old.ifPresent(standing -> end(standing, row));
                corrected += old.isPresent() ? 1 : 0;
                added += old.isPresent() ? 0 : 1;
            }
        }
    }

    private void withdraw(CatalogueRow row, Optional<CatalogueRepository.Standing> old) {
        if (old.isEmpty()) {
            errors.add(row.error(0, "nothing with this key can be withdrawn: " + row.key(table)));
            return;
        }
        Optional<FileError> needed = rules.inUse(table, row);
        if (needed.isPresent()) {
            errors.add(needed.get());
            return;
        }
        end(old.get(), row);
        withdrawn++;
    }

    private void end(CatalogueRepository.Standing old, CatalogueRow row) {
        store.end(table, old.id(), at, actor.user());
        if (changes.size() < TOLD) {
            Map<String, Object> change = new LinkedHashMap<>();
            change.put("old", told(old.values()));
            change.put("new", row.withdrawn() ? null : told(row.values()));
            changes.put(
                    String.join(
                            " ", row.key(table).stream().map(String::valueOf).toList()),
                    change);
        }
    }

    private void addNew() {
        for (CatalogueRow row : fresh) {
            rules.wrong(table, row, now.toLocalDate()).ifPresentOrElse(errors::add, () -> {
                store.add(table, row.values(), at, actor.user());
            });
        }
    }

    private static List<String> told(List<Object> values) {
        return values.stream()
                .map(value -> value == null ? "" : value.toString())
                .toList();
    }
}
