package org.voltdocket.catalogue;

/**
 * Who makes batteries for the distributor.
 *
 * @param code 1 to 30 of {@code A-Z 0-9 . _ -}; never reused
 */
public record Supplier(String code, String name) {}
