package org.voltdocket.diagnosis;

/** What may be wrong. */
public enum Cause {
    BATTERY_DEFECT("battery-defect"),
    BATTERY_WORN("battery-worn"),
    /** Alternator, its regulator or drive. */
    CHARGING_SOURCE("charging-source"),
    CURRENT_SENSOR("current-sensor"),
    /** The unit that commands charging. */
    CHARGE_CONTROL("charge-control"),
    /** Cables, grounds, connections. */
    WIRING("wiring"),
    STANDING_DRAIN("standing-drain"),
    /** Too little driving for the load. */
    DUTY("duty"),
    /** Wrong type or size fitted. */
    MISFIT("misfit"),
    /** Nothing wrong. */
    NONE("none");

    private final String id;

    Cause(String id) {
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
    public static Cause of(String id) {
        return Ids.find(values(), Cause::id, id);
    }
}
