package org.voltdocket.returned.bench;

import java.time.Instant;

/**
 * A step of the procedure with its state.
 *
 * @param startedAt null where it was not started
 * @param startedBy null where it was not started
 * @param doneAt when it was finished; null where it was not
 * @param doneBy null where it was not finished, or needs no person
 * @param from when it may begin or, while it runs, end; null where that is not known yet or is past
 * @param after the step to be done first; null where there is none
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

    /** The state of a step. */
    public enum State {
        DONE("done"),
        RUNNING("running"),
        /** May be done now. */
        READY("ready"),
        /** An earlier step or its waiting time is not over. */
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
