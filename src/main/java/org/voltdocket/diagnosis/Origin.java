package org.voltdocket.diagnosis;

/** Where evidence was recorded. */
public enum Origin {
    WORKSHOP("workshop"),
    /** Typed into a form by a person of the workshop. */
    TYPED("typed"),
    /** Measured by the distributor on a returned battery. */
    BENCH("bench");

    private final String id;

    Origin(String id) {
        this.id = id;
    }

    /** The stable identifier used in JSON, CSV and the rule book. */
    public String id() {
        return id;
    }

    /**
     * The constant with this identifier.
     *
     * @throws IllegalArgumentException if there is none; the message lists those there are
     */
    public static Origin of(String id) {
        return Ids.find(values(), Origin::id, id);
    }
}
