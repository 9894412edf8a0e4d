package org.voltdocket.assessment.rerun;

import java.util.Arrays;
import java.util.Optional;
import java.util.Set;

/** What a person may do to a run. */
public enum Step {
    /** The chunks under way are finished; no other is begun. */
    PAUSE("pause", State.PAUSED, Set.of(State.QUEUED, State.RUNNING)),
    RESUME("resume", State.QUEUED, Set.of(State.PAUSED)),
    /** Ends it. What a final run has appended stays. */
    STOP("stop", State.STOPPED, Set.of(State.QUEUED, State.RUNNING, State.PAUSED));

    private final String id;
    private final State to;
    private final Set<State> from;

    Step(String id, State to, Set<State> from) {
        this.id = id;
        this.to = to;
        this.from = from;
    }

    /** Stable identifier. */
    public String id() {
        return id;
    }

    State to() {
        return to;
    }

    boolean follows(State state) {
        return from.contains(state);
    }

    public static Optional<Step> of(String id) {
        return Arrays.stream(values()).filter(one -> one.id.equals(id)).findFirst();
    }
}
