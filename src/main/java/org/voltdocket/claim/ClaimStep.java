package org.voltdocket.claim;

import java.time.Instant;
import java.util.List;
import org.voltdocket.kernel.Role;

/**
 * One step of a claim, as taken.
 *
 * @param version that the claim has after it
 * @param reason may be null
 * @param items what was asked for: kinds of evidence, names of facts, or the clerk's own words; empty but for {@link ClaimAction#ASK}
 */
public record ClaimStep(
        long version,
        Instant at,
        String by,
        Role role,
        ClaimAction action,
        ClaimState from,
        ClaimState to,
        String reason,
        List<String> items) {

    public ClaimStep {
        items = List.copyOf(items);
    }

    /** Whether it proposed a decision that a second person has to confirm. */
    public boolean isProposal() {
        return action.decides() && from == to;
    }
}
