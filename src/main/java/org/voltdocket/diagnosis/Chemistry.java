package org.voltdocket.diagnosis;

/** Construction of a 12 V lead-acid starter battery. */
public enum Chemistry {
    /** Liquid acid. */
    FLOODED("flooded"),
    /** Enhanced flooded. */
    EFB("efb"),
    /** Acid in glass mat. */
    AGM("agm"),
    /** Acid in gel. */
    GEL("gel");

    private final String id;

    Chemistry(String id) {
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
    public static Chemistry of(String id) {
        return Ids.find(values(), Chemistry::id, id);
    }
}
