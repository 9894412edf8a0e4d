package org.voltdocket.casefile.catalogue;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.trail.Trail;

/** The catalogue in PostgreSQL. Locks in this order: catalogue, trail. */
@Service
@Transactional
class CatalogueBook implements Catalogue {

    /** Corrections that a trail entry spells out; all of them stand in the tables, with what stood before. */
    private static final int TOLD = 100;

    private final CatalogueStore store;
    private final CatalogueReader reader;
    private final CatalogueRules rules;
    private final Trail trail;
    private final Clock clock;

    CatalogueBook(CatalogueStore store, CatalogueReader reader, CatalogueRules rules, Trail trail, Clock clock) {
        this.store = store;
        this.reader = reader;
        this.rules = rules;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    public Imported take(Actor actor, String fileName, byte[] content) {
        if (actor.role() != Role.ADMIN) {
            throw new AccessDeniedException("the catalogue is kept by administrators");
        }
        CatalogueFile file = CatalogueFile.read(content);
        store.lock();
        Taking taking = new Taking(actor, file);
        taking.endOld();
        taking.addNew();
        if (!taking.errors.isEmpty()) {
            throw new CatalogueRefused(taking.errors);
        }
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("catalogue.table", file.table().id);
        details.put("catalogue.file", fileName == null ? "" : fileName);
        details.put("catalogue.sha256", Sha256.of(content).hex());
        details.put("catalogue.added", taking.added);
        details.put("catalogue.corrected", taking.corrected);
        details.put("catalogue.unchanged", taking.unchanged);
        details.put("catalogue.withdrawn", taking.withdrawn);
        details.putAll(taking.changes);
        trail.record(actor, "catalogue-imported", "catalogue", details);
        return new Imported(file.table().id, taking.added, taking.corrected, taking.unchanged, taking.withdrawn);
    }

    /** One file on its way into the tables. */
    private final class Taking {
        private final Actor actor;
        private final CatalogueTable table;
        private final List<CatalogueRow> rows;
        private final Instant at = clock.instant().truncatedTo(ChronoUnit.MICROS);
        private final LocalDate today = LocalDate.ofInstant(at, clock.getZone());
        private final List<CatalogueRow> fresh = new ArrayList<>();
        private final List<CatalogueRefused.Error> errors = new ArrayList<>();
        private final Map<String, Object> changes = new LinkedHashMap<>();
        private int added;
        private int corrected;
        private int unchanged;
        private int withdrawn;

        Taking(Actor actor, CatalogueFile file) {
            this.actor = actor;
            this.table = file.table();
            this.rows = file.rows();
        }

        /** Ends what the file says otherwise, all of it first: two rows of a file may change places. */
        private void endOld() {
            Set<List<Object>> keys = new HashSet<>();
            for (CatalogueRow row : rows) {
                if (!keys.add(row.key(table))) {
                    errors.add(row.error(0, "the file has a row of this key above already: " + row.key(table)));
                    continue;
                }
                Optional<CatalogueStore.Standing> old = store.standing(table, row.key(table));
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

        private void withdraw(CatalogueRow row, Optional<CatalogueStore.Standing> old) {
            if (old.isEmpty()) {
                errors.add(row.error(0, "there is nothing of this key to withdraw: " + row.key(table)));
                return;
            }
            Optional<CatalogueRefused.Error> needed = rules.inUse(table, row);
            if (needed.isPresent()) {
                errors.add(needed.get());
                return;
            }
            end(old.get(), row);
            withdrawn++;
        }

        private void end(CatalogueStore.Standing old, CatalogueRow row) {
            store.end(table, old.id(), at, actor.user());
            if (changes.size() < TOLD) {
                Map<String, Object> change = new LinkedHashMap<>();
                change.put("old", told(old.values()));
                change.put("new", row.withdrawn() ? null : told(row.values()));
                changes.put(
                        String.join(
                                " ",
                                row.key(table).stream().map(String::valueOf).toList()),
                        change);
            }
        }

        private void addNew() {
            for (CatalogueRow row : fresh) {
                rules.wrong(table, row, today).ifPresentOrElse(errors::add, () -> {
                    store.add(table, row.values(), at, actor.user());
                });
            }
        }
    }

    private static List<String> told(List<Object> values) {
        return values.stream()
                .map(value -> value == null ? "" : value.toString())
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Product> of(BatterySerial serial) {
        return reader.range(serial)
                .flatMap(range -> reader.type(range.type())
                        .flatMap(type -> reader.supplier(type.supplier()).map(s -> new Product(s, type, range))));
    }

    @Override
    @Transactional(readOnly = true)
    public Map<BatterySerial, Product> of(Collection<BatterySerial> serials) {
        Map<String, BatteryType> types = new HashMap<>();
        reader.types().forEach(type -> types.put(type.code(), type));
        Map<String, Supplier> suppliers = new HashMap<>();
        reader.suppliers().forEach(supplier -> suppliers.put(supplier.code(), supplier));
        Map<BatterySerial, Product> products = new HashMap<>();
        reader.ranges(serials).forEach((serial, range) -> {
            BatteryType type = types.get(range.type());
            if (type != null && suppliers.containsKey(type.supplier())) {
                products.put(serial, new Product(suppliers.get(type.supplier()), type, range));
            }
        });
        return products;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<BatteryType> outOfRange(BatterySerial serial) {
        return reader.range(serial).isPresent()
                ? Optional.empty()
                : reader.numberedLike(serial).filter(type -> store.stands(CatalogueTable.RANGES, "type", type.code()));
    }

    @Override
    @Transactional(readOnly = true)
    public List<Supplier> suppliers() {
        return reader.suppliers();
    }

    @Override
    @Transactional(readOnly = true)
    public List<BatteryType> types() {
        return reader.types();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<BatteryType> type(String code) {
        return reader.type(code);
    }

    @Override
    @Transactional(readOnly = true)
    public List<ProducedRange> ranges(String type) {
        return reader.ranges(type);
    }

    @Override
    @Transactional(readOnly = true)
    public List<SoldMonth> sales(String type) {
        return reader.sales(type);
    }
}
