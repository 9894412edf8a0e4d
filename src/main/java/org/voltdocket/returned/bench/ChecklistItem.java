package org.voltdocket.returned.bench;

import java.time.Instant;

/**
 * A step as it stands.
 *
 * @param startedAt null where it was not started
 * @param startedBy null where it was not started
 * @param doneAt when it was finished; null where it was not
 * @param doneBy null where it was not finished, or nobody has to do it
 * @param from when it may begin or, while it runs, end; null where that is not known yet or is past
 * @param after the step to be done first; null where none stands in the way
 */
public record ChecklistItem(
        ProcedureStage stage,
        State state,
        Instant startedAt,
        String startedBy,
        Instant doneAt,
        String doneBy,
        Instant from,
        BenchStep after) {

    /** How a step stands. */
    public enum State {
        DONE("done"),
        RUNNING("running"),
        /** May be done now. */
        READY("ready"),
        /** An earlier step or the clock stands in the way. */
        WAITING("waiting"),
        /** The battery must not be charged or loaded. */
        BLOCKED("blocked");

        private final String id;

        State(String id) {
            this.id = id;
        }

        /** The stable identifier. */
        public String id() {
            return id;
        }
    }

    /** Whether a step that runs may be finished: its time is over. */
    public boolean mayFinish() {
        return state == State.RUNNING && from == null;
    }
}
