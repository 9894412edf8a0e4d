package org.voltdocket.returned.bench;

import java.util.Arrays;
import java.util.Optional;

/** A step of the bench procedure, in its order. */
public enum BenchStep {
    /** Visual inspection: cracked, leaking, swollen, frozen, terminals. Done by recording the condition. */
    LOOK("look", false),
    /** Test in the state of arrival. */
    FIRST_TEST("first-test", false),
    CHARGE("charge", true),
    /** The second, slow part of a charge in two parts. */
    AFTER_CHARGE("after-charge", true),
    /** At rest, nothing connected. Begins by itself when the charge ends. */
    REST("rest", false),
    /** Rest voltage and cranking of the charged and rested battery. */
    SECOND_TEST("second-test", true),
    /** Discharge at I20 to 10.50 V. */
    CAPACITY("capacity", true),
    /** A battery is never left discharged. */
    RECHARGE("recharge", true);

    private final String id;
    private final boolean loads;

    BenchStep(String id, boolean loads) {
        this.id = id;
        this.loads = loads;
    }

    /** The stable identifier. */
    public String id() {
        return id;
    }

    /** Whether it charges or loads the battery, which a damaged or frozen one must not be. */
    public boolean loads() {
        return loads;
    }

    /** The constant with this identifier, if there is one. */
    public static Optional<BenchStep> of(String id) {
        return Arrays.stream(values()).filter(one -> one.id.equals(id)).findFirst();
    }
}
