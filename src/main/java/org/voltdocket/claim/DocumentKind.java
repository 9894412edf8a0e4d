package org.voltdocket.claim;

import java.util.Arrays;
import java.util.Optional;

/** The documents of a decision. */
public enum DocumentKind {
    /** To the workshop: the decision and its reasons in plain language. */
    LETTER("letter"),
    /** To the distributor and the workshop: the whole case at the time of the decision. */
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
