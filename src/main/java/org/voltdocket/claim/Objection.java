package org.voltdocket.claim;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * An objection of a workshop to a decision.
 *
 * @param answer empty until the distributor has answered
 */
public record Objection(UUID id, Instant at, String by, String reason, Optional<Answer> answer) {

    /** The answer of the distributor. It does not change the decision. */
    public record Answer(Instant at, String by, String text) {}

    /** Whether it waits for an answer. */
    public boolean open() {
        return answer.isEmpty();
    }
}
