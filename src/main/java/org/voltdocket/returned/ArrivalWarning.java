package org.voltdocket.returned;

import java.util.Arrays;
import java.util.Optional;

/** A warning on the arrival of a battery. */
public enum ArrivalWarning {
    NO_CASE("no-case"),
    SEVERAL_CASES("several-cases"),
    /** Neither a case nor the sales figures show that it was sold. */
    NEVER_SOLD("never-sold"),
    /** The list of its pallet does not contain it. */
    NOT_ON_LIST("not-on-list"),
    HERE_BEFORE("here-before");

    private final String id;

    ArrivalWarning(String id) {
        this.id = id;
    }

    /** The stable identifier used in JSON and CSV. */
    public String id() {
        return id;
    }

    /** The constant with this identifier, if there is one. */
    public static Optional<ArrivalWarning> of(String id) {
        return Arrays.stream(values()).filter(one -> one.id.equals(id)).findFirst();
    }
}
