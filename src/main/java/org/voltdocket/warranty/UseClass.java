package org.voltdocket.warranty;

import java.util.Arrays;
import java.util.stream.Collectors;

/** Use of a vehicle. The harder the use, the shorter the usual warranty (common practice). */
public enum UseClass {
    PRIVATE("private"),
    /** Delivery, trades, rental, driving schools. */
    COMMERCIAL("commercial"),
    /** Taxis, hire cars with driver, rescue: almost continuous use. */
    TAXI("taxi");

    private final String id;

    UseClass(String id) {
        this.id = id;
    }

    /** The stable identifier used in JSON and in forms. */
    public String id() {
        return id;
    }

    /**
     * The class with this identifier.
     *
     * @throws IllegalArgumentException if there is none; the message lists those there are
     */
    public static UseClass of(String id) {
        return Arrays.stream(values())
                .filter(use -> use.id.equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("'" + id + "' is none of "
                        + Arrays.stream(values()).map(UseClass::id).collect(Collectors.joining(", ")) + "."));
    }
}
