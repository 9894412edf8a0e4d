package org.voltdocket.diagnosis;

/** What an item of evidence is. */
public enum EvidenceKind {
    BATTERY_TEST("battery-test"),
    CRANKING_TEST("cranking-test"),
    CHARGING_TEST("charging-test"),
    /** There is a start or a running engine. */
    DRIVE_RECORDING("drive-recording"),
    /** At rest throughout. */
    STANDING_RECORDING("standing-recording"),
    /** One start, sampled at 50 Hz or more. */
    CRANKING_RECORDING("cranking-recording"),
    /** A bench capacity run, with measured current. */
    DISCHARGE_RECORDING("discharge-recording"),
    /** PDF, JPEG or PNG; kept without a verdict. */
    DOCUMENT("document");

    private final String id;

    EvidenceKind(String id) {
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
    public static EvidenceKind of(String id) {
        return Ids.find(values(), EvidenceKind::id, id);
    }
}
