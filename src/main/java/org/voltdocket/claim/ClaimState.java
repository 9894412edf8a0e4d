package org.voltdocket.claim;

import java.util.Arrays;
import java.util.stream.Collectors;

/** The state of a claim. */
public enum ClaimState {
    /** Opened by the workshop, not submitted yet. */
    DRAFT("draft"),
    SUBMITTED("submitted"),
    IN_REVIEW("in-review"),
    /** The distributor requested evidence and waits for the workshop. */
    EVIDENCE_ASKED("evidence-asked"),
    APPROVED("approved"),
    DECLINED("declined"),
    /** Paid without an obligation. */
    GOODWILL("goodwill"),
    /** Decided and closed. */
    SETTLED("settled"),
    /** Withdrawn by the workshop before a decision. */
    WITHDRAWN("withdrawn");

    private final String id;

    ClaimState(String id) {
        this.id = id;
    }

    /** The stable identifier used in JSON and in addresses. */
    public String id() {
        return id;
    }

    /** Whether somebody has to act before the decision. The SQL function {@code claim_is_open} says the same. */
    public boolean isOpen() {
        return this == SUBMITTED || this == IN_REVIEW || this == EVIDENCE_ASKED;
    }

    /**
     * Whether no step can follow; only then may the case have another claim. The SQL function {@code claim_has_ended} says the
     * same.
     */
    public boolean isEnd() {
        return this == SETTLED || this == WITHDRAWN;
    }

    /**
     * The state with this identifier.
     *
     * @throws IllegalArgumentException if there is none; the message lists those there are
     */
    public static ClaimState of(String id) {
        return Arrays.stream(values())
                .filter(state -> state.id.equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("'" + id + "' is none of "
                        + Arrays.stream(values()).map(ClaimState::id).collect(Collectors.joining(", ")) + "."));
    }
}
