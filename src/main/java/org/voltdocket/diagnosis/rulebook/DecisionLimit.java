package org.voltdocket.diagnosis.rulebook;

import java.util.Arrays;

/** A limit that decides about the verdict, the leaning or the advice. Its value is data of the edition. */
public enum DecisionLimit {
    /** Probability that a side needs for the case to lean to it. */
    LEANING("leaning", "probability", 0.5, 1),
    /** The same for the vehicle. */
    LEANING_VEHICLE("leaning-vehicle", "probability", 0.5, 1),
    /** The same for the vehicle where no test or no recording of the charging supports it. */
    LEANING_UNTESTED("leaning-untested", "probability", 0.5, 1),
    /** Probability that the first cause itself needs for the case to lean to the vehicle. */
    FIRST_CAUSE("first-cause", "probability", 0, 1),
    /** A battery test fails from this probability that the true value is outside the limit. */
    TEST_FAILED("test-failed", "probability", 0, 1),
    /** Probability of defect and wear together that a failed battery needs. */
    BATTERY_FAULT("battery-fault", "probability", 0, 1),
    /** Share of defect, or of wear, in both together from which the kind of a failure is named. */
    KIND_KNOWN("kind-known", "share", 0.5, 1),
    /** A missing fact opens a decision if the values that change it have together this probability. */
    MISSING_FACT("missing-fact", "probability", 0, 1),
    /** Least probability of a cause that gets a next step of its own. */
    NEXT_STEP("next-step", "probability", 0, 1),
    /** What acting on the wrong cause costs, in working time. */
    WRONG_REPAIR("wrong-repair", "min", 1, 100_000);

    private final String id;
    private final String unit;
    private final double least;
    private final double most;

    DecisionLimit(String id, String unit, double least, double most) {
        this.id = id;
        this.unit = unit;
        this.least = least;
        this.most = most;
    }

    /** The stable identifier used in the rule book. */
    public String id() {
        return id;
    }

    /** Unit of the value: {@code probability}, {@code share} or {@code min}. */
    public String unit() {
        return unit;
    }

    /** Whether an edition may give the limit this value. */
    boolean allows(double value) {
        return value >= least && value <= most;
    }

    /** The allowed values, for messages. */
    String range() {
        return least + " to " + most;
    }

    /**
     * The constant with this identifier.
     *
     * @throws IllegalArgumentException if there is none; the message lists those there are
     */
    static DecisionLimit of(String id) {
        return Arrays.stream(values())
                .filter(limit -> limit.id.equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("'" + id + "' is none of "
                        + String.join(
                                ", ",
                                Arrays.stream(values()).map(DecisionLimit::id).toList()) + "."));
    }
}
