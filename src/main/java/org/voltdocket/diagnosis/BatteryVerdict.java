package org.voltdocket.diagnosis;

/** What the evidence says of the battery itself. */
public enum BatteryVerdict {
    SOUND("sound"),
    /** Too little charge to judge. */
    RECHARGE_AND_REPEAT("recharge-and-repeat"),
    /** Aged by use; no defect. */
    WORN("worn"),
    DEFECTIVE("defective"),
    /** Nothing judges it yet. */
    UNDETERMINED("undetermined");

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
