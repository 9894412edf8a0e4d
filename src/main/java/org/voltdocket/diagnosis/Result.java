package org.voltdocket.diagnosis;

/** How a value compares with its limit. */
public enum Result {
    INSIDE("inside"),
    OUTSIDE("outside"),
    /** The interval straddles the limit. */
    UNCERTAIN("uncertain");

    private final String id;

    Result(String id) {
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
    public static Result of(String id) {
        return Ids.find(values(), Result::id, id);
    }
}
