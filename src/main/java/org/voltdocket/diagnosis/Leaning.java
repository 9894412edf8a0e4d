package org.voltdocket.diagnosis;

/** The side that a case leans to. */
public enum Leaning {
    BATTERY_SIDE("battery-side"),
    /** The battery passed; charging system, sensor, control, wiring or a drain is the likelier cause. */
    VEHICLE_SIDE("vehicle-side"),
    USAGE_SIDE("usage-side"),
    NO_FAULT_SEEN("no-fault-seen"),
    /** More evidence needed. */
    OPEN("open"),
    /** Evidence that cannot belong together. */
    CONTRADICTORY("contradictory");

    private final String id;

    Leaning(String id) {
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
    public static Leaning of(String id) {
        return Ids.find(values(), Leaning::id, id);
    }
}
