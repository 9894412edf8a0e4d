package org.voltdocket.returned;

import java.util.Arrays;
import java.util.Optional;

/** The outcome of the bench for a returned battery. */
public enum BenchOutcome {
    DEFECT_CONFIRMED("defect-confirmed"),
    WEAR_CONFIRMED("wear-confirmed"),
    NO_FAULT_FOUND("no-fault-found"),
    DAMAGED_BY_USE("damaged-by-use"),
    NOT_TESTED("not-tested");

    private final String id;

    BenchOutcome(String id) {
        this.id = id;
    }

    /** The stable identifier used in JSON and CSV. */
    public String id() {
        return id;
    }

    /** The constant with this identifier, if there is one. */
    public static Optional<BenchOutcome> of(String id) {
        return Arrays.stream(values()).filter(one -> one.id.equals(id)).findFirst();
    }
}
