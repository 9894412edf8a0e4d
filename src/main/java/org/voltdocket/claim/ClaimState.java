package org.voltdocket.claim;

import java.util.Arrays;
import java.util.stream.Collectors;

/** Where a claim stands. */
public enum ClaimState {
    /** Written by the workshop, not yet handed in. */
    DRAFT("draft"),
    SUBMITTED("submitted"),
    IN_REVIEW("in-review"),
    /** The distributor waits for the workshop. */
    EVIDENCE_ASKED("evidence-asked"),
    APPROVED("approved"),
    DECLINED("declined"),
    /** Paid without owing it. */
    GOODWILL("goodwill"),
    /** Decided and done with. */
    SETTLED("settled"),
    /** Taken back by the workshop before a decision. */
    WITHDRAWN("withdrawn");

    private final String id;

    ClaimState(String id) {
        this.id = id;
    }

    /** The stable identifier used in JSON and in addresses. */
    public String id() {
        return id;
    }

    /** Whether nothing can follow; only then may the case have another claim. */
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
