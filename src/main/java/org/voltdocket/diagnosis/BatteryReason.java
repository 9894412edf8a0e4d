package org.voltdocket.diagnosis;

/** Why the battery has its verdict. */
public enum BatteryReason {
    /** Sound: a test at sufficient charge passed. */
    TESTED_CHARGED("tested-charged"),
    /** Failed by a defect. */
    DEFECT("defect"),
    /** Failed by wear. */
    WEAR("wear"),
    /** Failed, but defect and wear cannot be told apart. */
    KIND_OPEN("kind-open"),
    /** Not judged: the charge was too low for a test. */
    TOO_DISCHARGED("too-discharged"),
    /** Not judged: no test measured what the battery delivers when charged. */
    NO_TEST("no-test"),
    /** Not judged: a missing fact would change the result. */
    FACTS_MISSING("facts-missing"),
    /** Not judged: the evidence contradicts itself. */
    CONFLICT("conflict");

    private final String id;

    BatteryReason(String id) {
        this.id = id;
    }

    /** The stable identifier used in JSON, CSV and the rule book. */
    public String id() {
        return id;
    }

    /** The verdict that this reason belongs to. */
    public BatteryVerdict verdict() {
        return switch (this) {
            case TESTED_CHARGED -> BatteryVerdict.SOUND;
            case DEFECT, WEAR, KIND_OPEN -> BatteryVerdict.FAILED;
            case TOO_DISCHARGED, NO_TEST, FACTS_MISSING, CONFLICT -> BatteryVerdict.NOT_JUDGED;
        };
    }

    /**
     * The constant with this identifier.
     *
     * @throws IllegalArgumentException if there is none; the message lists those there are
     */
    public static BatteryReason of(String id) {
        return Ids.find(values(), BatteryReason::id, id);
    }
}
