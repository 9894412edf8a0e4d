package org.voltdocket.diagnosis.rulebook;

import java.io.InputStream;

/**
 * One edition of the rule book: limits, sources and weights.
 *
 * @param edition for example {@code 2026.1}
 */
public record Rulebook(String edition) {

    /**
     * Reads an edition.
     *
     * @throws IllegalArgumentException if the file is no rule book; the message names line and member
     */
    public static Rulebook read(InputStream yaml) {
        throw new UnsupportedOperationException("not yet");
    }
}
