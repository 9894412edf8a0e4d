package org.voltdocket.catalogue;

import java.io.Serializable;

/**
 * What a file changed.
 *
 * @param table which table it filled: {@code suppliers}, {@code types}, {@code ranges} or {@code sales}
 * @param added rows of keys that did not stand before
 * @param corrected rows that took the place of others
 * @param unchanged rows that stood just so
 * @param withdrawn rows that ended without another in their place
 */
public record ImportResult(String table, int added, int corrected, int unchanged, int withdrawn)
        implements Serializable {}
