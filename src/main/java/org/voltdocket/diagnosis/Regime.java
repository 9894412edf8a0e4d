package org.voltdocket.diagnosis;

/** What the battery and the vehicle were doing during a stretch of a recording. */
public enum Regime {
    REST("rest"),
    CRANKING("cranking"),
    /** Current into the battery. */
    CHARGING("charging"),
    /** About no current. */
    HOLDING("holding"),
    /** The engine runs and the battery supplies. */
    DISCHARGING("discharging"),
    /** Engine stopped in traffic. */
    STOPPED("stopped"),
    UNKNOWN("unknown");

    private final String id;

    Regime(String id) {
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
    public static Regime of(String id) {
        return Ids.find(values(), Regime::id, id);
    }
}
