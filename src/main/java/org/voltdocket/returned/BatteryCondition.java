package org.voltdocket.returned;

import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;

/**
 * A visual inspection before anything is connected to the battery.
 *
 * @param note null where there is none
 */
public record BatteryCondition(
        boolean cracked,
        boolean leaking,
        boolean swollen,
        boolean frozen,
        Terminals terminals,
        String note,
        Instant seenAt,
        String seenBy) {

    /** State of the terminals. */
    public enum Terminals {
        SOUND("sound"),
        CORRODED("corroded"),
        DAMAGED("damaged");

        private final String id;

        Terminals(String id) {
            this.id = id;
        }

        /** The stable identifier used in JSON and CSV. */
        public String id() {
            return id;
        }

        /** The constant with this identifier, if there is one. */
        public static Optional<Terminals> of(String id) {
            return Arrays.stream(values()).filter(one -> one.id.equals(id)).findFirst();
        }
    }

    /** Whether it must be neither charged nor load-tested: it may burst or spill acid (common practice). */
    public boolean dangerous() {
        return cracked || leaking || swollen || frozen;
    }
}
