package org.voltdocket.diagnosis;

/** A column of a recording. */
public enum Channel {
    /** V at the battery posts, independent instrument. */
    MEASURED_V("measured_v"),
    /** A, independent clamp, positive into the battery. */
    MEASURED_A("measured_a"),
    /** V, as reported by the vehicle. */
    REPORTED_V("reported_v"),
    /** A, the vehicle's battery current sensor, positive into the battery. */
    REPORTED_A("reported_a"),
    /** %, the vehicle's state of charge. */
    REPORTED_SOC("reported_soc_pct"),
    /** 1/min. */
    ENGINE_RPM("engine_rpm"),
    /** km/h. */
    SPEED("speed_kmh"),
    /** °C. */
    COOLANT("coolant_c"),
    /** °C. */
    AMBIENT("ambient_c");

    private final String id;

    Channel(String id) {
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
    public static Channel of(String id) {
        return Ids.find(values(), Channel::id, id);
    }
}
