package org.voltdocket.claim.decision;

import org.voltdocket.claim.ClaimAction;
import org.voltdocket.diagnosis.Leaning;

/** Whether the leaning of the assessment supports a decision. */
final class DecisionBasis {

    /** Smallest number of characters of a reason if the leaning does not support the decision: about one sentence. */
    static final int LEAST_REASON = 40;

    private DecisionBasis() {}

    /**
     * Whether the decision contradicts the leaning and therefore needs a longer reason: to approve without a leaning to the battery,
     * or to decline with one or with an open or contradictory leaning. Goodwill contradicts no leaning, because it pays without an
     * obligation.
     */
    static boolean against(Leaning leaning, ClaimAction decision) {
        return switch (decision) {
            case APPROVE -> leaning != Leaning.BATTERY_SIDE;
            case DECLINE ->
                leaning == Leaning.BATTERY_SIDE || leaning == Leaning.OPEN || leaning == Leaning.CONTRADICTORY;
            default -> false;
        };
    }
}
