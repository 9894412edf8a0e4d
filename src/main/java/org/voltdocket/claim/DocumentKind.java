package org.voltdocket.claim;

import java.util.Arrays;
import java.util.Optional;

/** What is printed of a decision. */
public enum DocumentKind {
    /** To the workshop, in plain words. */
    LETTER("letter"),
    /** The case with every number, as it stood. */
    REPORT("report");

    private final String id;

    DocumentKind(String id) {
        this.id = id;
    }

    /** The stable identifier used in addresses. */
    public String id() {
        return id;
    }

    /** The kind with this identifier, if there is one. */
    public static Optional<DocumentKind> of(String id) {
        return Arrays.stream(values()).filter(kind -> kind.id.equals(id)).findFirst();
    }
}
