package org.voltdocket.returned;

import java.util.Arrays;
import java.util.Optional;

/** What is to be told of a battery that arrives. */
public enum ArrivalWarning {
    NO_CASE("no-case"),
    SEVERAL_CASES("several-cases"),
    /** Neither a case nor the sales register knows that it was sold. */
    NEVER_SOLD("never-sold"),
    /** The pallet it came on does not list it. */
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
