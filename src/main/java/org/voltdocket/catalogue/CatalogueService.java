package org.voltdocket.catalogue;

import java.time.Clock;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.trail.Trail;

/** Battery types, serial ranges and suppliers as they are now. Locks in this order: catalogue, trail. */
@Service
@Transactional
public class CatalogueService {

    private final CatalogueRepository store;
    private final CatalogueQueries reader;
    private final CatalogueRowValidator rules;
    private final Trail trail;
    private final Clock clock;

    CatalogueService(
            CatalogueRepository store, CatalogueQueries reader, CatalogueRowValidator rules, Trail trail, Clock clock) {
        this.store = store;
        this.reader = reader;
        this.rules = rules;
        this.trail = trail;
        this.clock = clock;
    }

    /**
     * Takes a CSV file in: all of it or nothing. Which table it fills is told by its header. For {@code ADMIN}.
     *
     * @param fileName as sent; for the trail
     * @throws org.voltdocket.kernel.RequestException (422) if a line cannot be right; the catalogue stays as it was
     * @throws org.springframework.security.access.AccessDeniedException for other roles
     */
    public ImportResult take(Actor actor, String fileName, byte[] content) {
        if (!actor.canAdminister()) {
            throw new AccessDeniedException("only an administrator changes the catalogue");
        }
        CatalogueFile file = CatalogueFile.read(content);
        store.lock();
        CatalogueImport taking =
                new CatalogueImport(actor, file, store, rules, clock.instant().atZone(clock.getZone()));
        taking.take();
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("catalogue.table", file.table().id);
        details.put("catalogue.file", fileName == null ? "" : fileName);
        details.put("catalogue.sha256", Sha256.of(content).hex());
        taking.tell(details);
        trail.record(actor, "catalogue-imported", "catalogue", details);
        return taking.imported();
    }

    /** Type, batch and supplier of a battery; empty where its serial lies in no produced range. */
    @Transactional(readOnly = true)
    public Optional<Product> of(BatterySerial serial) {
        return reader.range(serial)
                .flatMap(range -> reader.type(range.type())
                        .flatMap(type -> reader.supplier(type.supplier()).map(s -> new Product(s, type, range))));
    }

    /** The same of many; a serial in no produced range is left out. One query. */
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

    /**
     * The type whose serials begin like this one although it lies in none of the type's produced ranges; empty where it
     * lies in a range, where no type's serials begin so, or where that type has no range and nothing can be said.
     */
    @Transactional(readOnly = true)
    public Optional<BatteryType> outOfRange(BatterySerial serial) {
        return reader.range(serial).isPresent()
                ? Optional.empty()
                : reader.numberedLike(serial).filter(type -> store.stands(CatalogueTable.RANGES, "type", type.code()));
    }

    /** Every supplier, by code. */
    @Transactional(readOnly = true)
    public List<Supplier> suppliers() {
        return reader.suppliers();
    }

    /** Every battery type, by code. */
    @Transactional(readOnly = true)
    public List<BatteryType> types() {
        return reader.types();
    }

    /** The type with this code. */
    @Transactional(readOnly = true)
    public Optional<BatteryType> type(String code) {
        return reader.type(code);
    }

    /** Produced ranges of a type by batch and first serial, those that a correction ended too. */
    @Transactional(readOnly = true)
    public List<ProducedRange> ranges(String type) {
        return reader.ranges(type);
    }

    /** What was sold of a type, by batch and month. */
    @Transactional(readOnly = true)
    public List<SoldMonth> sales(String type) {
        return reader.sales(type);
    }
}
