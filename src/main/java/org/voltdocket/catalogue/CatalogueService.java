package org.voltdocket.catalogue;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;

/** Battery types, production ranges and sales. What it answers is what stands now. */
public interface CatalogueService {

    /** Type, batch and supplier of a battery; empty where its serial lies in no produced range. */
    Optional<Product> of(BatterySerial serial);

    /** The same of many; a serial in no produced range is left out. One query. */
    Map<BatterySerial, Product> of(Collection<BatterySerial> serials);

    /**
     * The type whose serials begin like this one although it lies in none of the type's produced ranges; empty where it
     * lies in a range, where no type's serials begin so, or where that type has no range and nothing can be said.
     */
    Optional<BatteryType> outOfRange(BatterySerial serial);

    /** Every supplier, by code. */
    List<Supplier> suppliers();

    /** Every battery type, by code. */
    List<BatteryType> types();

    /** The type with this code. */
    Optional<BatteryType> type(String code);

    /** Produced ranges of a type by batch and first serial, those that a correction ended too. */
    List<ProducedRange> ranges(String type);

    /** What was sold of a type, by batch and month. */
    List<SoldMonth> sales(String type);

    /**
     * Takes a CSV file in: all of it or nothing. Which table it fills is told by its header. For {@code ADMIN}.
     *
     * @param fileName as sent; for the trail
     * @throws InvalidCatalogueFileException if a line cannot be right; the catalogue stays as it was
     * @throws org.springframework.security.access.AccessDeniedException for other roles
     */
    ImportResult take(Actor actor, String fileName, byte[] content);
}
