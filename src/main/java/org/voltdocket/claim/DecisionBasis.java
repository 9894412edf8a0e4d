package org.voltdocket.claim;

import org.voltdocket.diagnosis.Leaning;

/** Whether a leaning carries a decision. */
final class DecisionBasis {

    /** Least characters of a reason where the leaning does not carry the decision: about one sentence. */
    static final int LEAST_REASON = 40;

    private DecisionBasis() {}

    /**
     * Whether the decision needs a reason of its own: to approve what does not lean to the battery, or to decline what does or
     * what the evidence leaves open. Goodwill says itself that nothing is owed, so no leaning speaks against it.
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
