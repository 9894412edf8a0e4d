package org.voltdocket.claim;

import java.time.Instant;
import java.util.List;
import org.voltdocket.kernel.Role;

/**
 * One step of a claim, as taken.
 *
 * @param reason may be null
 * @param items what was asked for: kinds of evidence or names of facts; empty but for {@link ClaimAction#ASK}
 */
public record ClaimStep(
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
}
