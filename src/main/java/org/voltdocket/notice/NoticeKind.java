package org.voltdocket.notice;

import java.util.Arrays;

/** The kinds of unusual patterns in a case or a workshop. */
public enum NoticeKind {
    /** The workshop objects to the decision on its claim, and the objection is not answered. */
    DECISION_OBJECTED_TO("decision-objected-to"),
    /** Two or more claims for one battery serial, in any vehicle. */
    SERIAL_CLAIMED_TWICE("serial-claimed-twice"),
    /** A file with the same bytes under the serial of another battery. */
    SAME_FILE("same-file"),
    /** A recording that equals a recording of another battery, possibly resampled, shifted or trimmed. */
    NEAR_RECORDING("near-recording"),
    /** A photo that equals a photo of another battery, possibly scaled or compressed again. */
    NEAR_PHOTO("near-photo"),
    /** A battery test with exactly the readings of another battery by the same instrument. */
    SAME_READINGS("same-readings"),
    /** Tests of two batteries by one instrument within a minute. */
    SAME_MOMENT("same-moment"),
    /** A serial with the prefix of a type, outside of all produced ranges of the type. */
    SERIAL_OUT_OF_RANGE("serial-out-of-range"),
    /** A claim opened before the battery was sold. */
    CLAIMED_BEFORE_SALE("claimed-before-sale"),
    /** A battery sold before its batch was produced. */
    SOLD_BEFORE_PRODUCED("sold-before-produced"),
    /** A workshop whose tests never find a failed battery. */
    WORKSHOP_NEVER_FAILS("workshop-never-fails"),
    /** A workshop whose tests find every battery failed. */
    WORKSHOP_ALWAYS_FAILS("workshop-always-fails");

    private final String id;

    NoticeKind(String id) {
        this.id = id;
    }

    /** The stable identifier used in JSON and in addresses. */
    public String id() {
        return id;
    }

    static NoticeKind of(String id) {
        return Arrays.stream(values())
                .filter(kind -> kind.id.equals(id))
                .findFirst()
                .orElseThrow();
    }
}
