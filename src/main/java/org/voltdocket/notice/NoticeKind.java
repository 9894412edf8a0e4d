package org.voltdocket.notice;

import java.util.Arrays;

/** What can strike one about a case or a workshop. */
public enum NoticeKind {
    /** The workshop objects to the decision on its claim, and nobody has answered. */
    DECISION_OBJECTED_TO("decision-objected-to"),
    /** Two claims or more for one battery serial, in whatever vehicle. */
    SERIAL_CLAIMED_TWICE("serial-claimed-twice"),
    /** The very bytes of a file under another battery's serial. */
    SAME_FILE("same-file"),
    /** A recording that has the wave of another battery's recording, though resampled, shifted or trimmed. */
    NEAR_RECORDING("near-recording"),
    /** A photo that looks like one of another battery, though scaled or compressed anew. */
    NEAR_PHOTO("near-photo"),
    /** A battery test that repeats another battery's readings to the last digit, by the same instrument. */
    SAME_READINGS("same-readings"),
    /** Tests of two batteries by one instrument within a minute. */
    SAME_MOMENT("same-moment"),
    /** A serial like those of a type, in none of the type's produced ranges. */
    SERIAL_OUT_OF_RANGE("serial-out-of-range"),
    /** A claim opened before the battery was sold. */
    CLAIMED_BEFORE_SALE("claimed-before-sale"),
    /** A battery sold before its batch was produced. */
    SOLD_BEFORE_PRODUCED("sold-before-produced"),
    /** A workshop whose tests never find a battery worn or defective. */
    WORKSHOP_NEVER_FAILS("workshop-never-fails"),
    /** A workshop whose tests find every battery worn or defective. */
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
