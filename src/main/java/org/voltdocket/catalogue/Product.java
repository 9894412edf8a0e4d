package org.voltdocket.catalogue;

/** What a serial is by the catalogue. */
public record Product(Supplier supplier, BatteryType type, ProducedRange range) {

    /** The batch it was made in. */
    public String batch() {
        return range.batch();
    }
}
