package org.voltdocket.claim;

import static org.voltdocket.claim.ClaimAction.ANSWER;
import static org.voltdocket.claim.ClaimAction.APPROVE;
import static org.voltdocket.claim.ClaimAction.ASK;
import static org.voltdocket.claim.ClaimAction.DECLINE;
import static org.voltdocket.claim.ClaimAction.GOODWILL;
import static org.voltdocket.claim.ClaimAction.SETTLE;
import static org.voltdocket.claim.ClaimAction.SUBMIT;
import static org.voltdocket.claim.ClaimAction.TAKE;
import static org.voltdocket.claim.ClaimAction.WITHDRAW;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The state that each action leads to from each state. */
public final class ClaimTransitions {

    private static final Map<ClaimAction, ClaimState> SETTLING = Map.of(SETTLE, ClaimState.SETTLED);

    private static final Map<ClaimState, Map<ClaimAction, ClaimState>> STEPS = Map.of(
            ClaimState.DRAFT, Map.of(SUBMIT, ClaimState.SUBMITTED, WITHDRAW, ClaimState.WITHDRAWN),
            ClaimState.SUBMITTED, Map.of(TAKE, ClaimState.IN_REVIEW, WITHDRAW, ClaimState.WITHDRAWN),
            ClaimState.IN_REVIEW,
                    Map.of(
                            ASK, ClaimState.EVIDENCE_ASKED,
                            APPROVE, ClaimState.APPROVED,
                            DECLINE, ClaimState.DECLINED,
                            GOODWILL, ClaimState.GOODWILL,
                            WITHDRAW, ClaimState.WITHDRAWN),
            // a clerk may resume the review without an answer
            ClaimState.EVIDENCE_ASKED,
                    Map.of(
                            ANSWER, ClaimState.IN_REVIEW,
                            TAKE, ClaimState.IN_REVIEW,
                            WITHDRAW, ClaimState.WITHDRAWN),
            ClaimState.APPROVED, SETTLING,
            ClaimState.DECLINED, SETTLING,
            ClaimState.GOODWILL, SETTLING,
            ClaimState.SETTLED, Map.of(),
            ClaimState.WITHDRAWN, Map.of());

    private ClaimTransitions() {}

    /** The state after the action; empty if the state does not allow it. */
    public static Optional<ClaimState> after(ClaimState state, ClaimAction action) {
        return Optional.ofNullable(STEPS.get(state).get(action));
    }

    /** The actions that the state allows to any role, in the order of {@link ClaimAction}. */
    public static List<ClaimAction> from(ClaimState state) {
        return Arrays.stream(ClaimAction.values())
                .filter(action -> after(state, action).isPresent())
                .toList();
    }

    /**
     * The state after the action, if a decision may wait for a second person: then only confirming, refusing, requesting evidence
     * and withdrawing are allowed. The latter two end the proposal too.
     */
    public static Optional<ClaimState> after(ClaimState state, Optional<ClaimState> proposed, ClaimAction action) {
        if (proposed.isEmpty()) {
            return after(state, action);
        }
        return switch (action) {
            case CONFIRM -> proposed;
            case REFUSE -> Optional.of(state);
            case ASK, WITHDRAW -> after(state, action);
            default -> Optional.empty();
        };
    }

    /** The actions that are allowed to any role, in the order of {@link ClaimAction}. */
    public static List<ClaimAction> from(ClaimState state, Optional<ClaimState> proposed) {
        return Arrays.stream(ClaimAction.values())
                .filter(action -> after(state, proposed, action).isPresent())
                .toList();
    }
}
