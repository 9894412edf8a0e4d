package org.voltdocket.assessment.rerun;

import java.util.Arrays;
import java.util.Optional;

/** What a run does with what it finds. */
public enum RunMode {
    /** Changes nothing. */
    TRIAL("trial"),
    /** Appends assessments; older ones and decisions stay. */
    FINAL("final");

    private final String id;

    RunMode(String id) {
        this.id = id;
    }

    /** Stable identifier. */
    public String id() {
        return id;
    }

    public static Optional<RunMode> of(String id) {
        return Arrays.stream(values()).filter(one -> one.id.equals(id)).findFirst();
    }
}
