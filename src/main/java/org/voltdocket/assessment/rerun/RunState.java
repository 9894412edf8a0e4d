package org.voltdocket.assessment.rerun;

import java.util.Arrays;

/** Where a run stands. */
public enum RunState {
    QUEUED("queued"),
    RUNNING("running"),
    PAUSED("paused"),
    DONE("done"),
    STOPPED("stopped"),
    FAILED("failed");

    private final String id;

    RunState(String id) {
        this.id = id;
    }

    /** Stable identifier. */
    public String id() {
        return id;
    }

    /** Whether something may still happen. */
    public boolean open() {
        return this == QUEUED || this == RUNNING || this == PAUSED;
    }

    /** @throws IllegalArgumentException if there is none */
    static RunState of(String id) {
        return Arrays.stream(values())
                .filter(one -> one.id.equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no state '" + id + "'"));
    }
}
