package org.voltdocket.diagnosis;

/** How the vehicle controls its charging source. */
public enum ChargingControl {
    /** The regulator holds one voltage by temperature. */
    CONVENTIONAL("conventional"),
    /** A control unit sets the voltage and may switch the alternator off for a while. */
    MANAGED("managed"),
    UNKNOWN("unknown");

    private final String id;

    ChargingControl(String id) {
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
    public static ChargingControl of(String id) {
        return Ids.find(values(), ChargingControl::id, id);
    }
}
