package org.voltdocket.returned.bench;

import java.util.Arrays;
import java.util.Optional;

/** What is done with a step. */
public enum StepAction {
    START("start"),
    FINISH("finish"),
    /** Ends a step that takes time before its time; it counts as not done. */
    BREAK_OFF("break-off");

    private final String id;

    StepAction(String id) {
        this.id = id;
    }

    /** The stable identifier. */
    public String id() {
        return id;
    }

    /** The constant with this identifier, if there is one. */
    public static Optional<StepAction> of(String id) {
        return Arrays.stream(values()).filter(one -> one.id.equals(id)).findFirst();
    }
}
