package org.voltdocket.diagnosis;

/** What the evidence says about the battery itself; {@link BatteryReason} says why. */
public enum BatteryVerdict {
    /** A test at sufficient charge passed. */
    SOUND("sound"),
    /** Defective or worn. */
    FAILED("failed"),
    /** No evidence decides. */
    NOT_JUDGED("not-judged");

    private final String id;

    BatteryVerdict(String id) {
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
    public static BatteryVerdict of(String id) {
        return Ids.find(values(), BatteryVerdict::id, id);
    }
}
