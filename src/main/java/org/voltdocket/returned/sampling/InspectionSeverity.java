package org.voltdocket.returned.sampling;

import java.util.Arrays;

/** Severity of inspection (ISO 2859-1, 9.2). */
public enum InspectionSeverity {
    NORMAL("normal"),
    TIGHTENED("tightened"),
    REDUCED("reduced");

    private final String id;

    InspectionSeverity(String id) {
        this.id = id;
    }

    /** The stable identifier used in JSON and CSV. */
    public String id() {
        return id;
    }

    /** @throws IllegalArgumentException if there is none of this name */
    public static InspectionSeverity of(String id) {
        return Arrays.stream(values())
                .filter(one -> one.id.equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no severity '" + id + "'"));
    }
}
