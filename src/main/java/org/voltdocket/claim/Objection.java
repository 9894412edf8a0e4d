package org.voltdocket.claim;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * A workshop does not agree with a decision.
 *
 * @param answer empty until the distributor has answered
 */
public record Objection(UUID id, Instant at, String by, String reason, Optional<Answer> answer) {

    /** What the distributor says to it. The decision stands as it is. */
    public record Answer(Instant at, String by, String text) {}

    /** Whether it waits for an answer. */
    public boolean open() {
        return answer.isEmpty();
    }
}
