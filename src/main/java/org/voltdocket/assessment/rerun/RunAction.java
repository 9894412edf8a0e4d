package org.voltdocket.assessment.rerun;

import java.util.Arrays;
import java.util.Optional;
import java.util.Set;

/** What a person may do to a run. */
public enum RunAction {
    /** The chunks under way are finished; no other is begun. */
    PAUSE("pause", RunState.PAUSED, Set.of(RunState.QUEUED, RunState.RUNNING)),
    RESUME("resume", RunState.QUEUED, Set.of(RunState.PAUSED)),
    /** Ends it. What a final run has appended stays. */
    STOP("stop", RunState.STOPPED, Set.of(RunState.QUEUED, RunState.RUNNING, RunState.PAUSED));

    private final String id;
    private final RunState to;
    private final Set<RunState> from;

    RunAction(String id, RunState to, Set<RunState> from) {
        this.id = id;
        this.to = to;
        this.from = from;
    }

    /** Stable identifier. */
    public String id() {
        return id;
    }

    RunState to() {
        return to;
    }

    boolean follows(RunState state) {
        return from.contains(state);
    }

    public static Optional<RunAction> of(String id) {
        return Arrays.stream(values()).filter(one -> one.id.equals(id)).findFirst();
    }
}
