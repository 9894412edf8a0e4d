package org.voltdocket.claim;

import java.util.Arrays;
import java.util.Optional;
import org.voltdocket.kernel.Role;

/** The steps of a claim, and whether its workshop or the distributor takes them. */
public enum ClaimAction {
    SUBMIT("submit", true),
    TAKE("take", false),
    ASK("ask", false),
    ANSWER("answer", true),
    APPROVE("approve", false),
    DECLINE("decline", false),
    GOODWILL("goodwill", false),
    /** Confirms a decision that waits for a second person. */
    CONFIRM("confirm", false),
    /** Refuses a decision that waits for a second person. */
    REFUSE("refuse", false),
    SETTLE("settle", false),
    WITHDRAW("withdraw", true);

    private final String id;
    private final boolean byWorkshop;

    ClaimAction(String id, boolean byWorkshop) {
        this.id = id;
        this.byWorkshop = byWorkshop;
    }

    /** The stable identifier used in addresses and in JSON. */
    public String id() {
        return id;
    }

    /** Whether this role may take the step. A workshop takes steps of its own claims only. */
    public boolean isFor(Role role) {
        return byWorkshop ? role.isWorkshop() : role.canDecideClaims();
    }

    /** Whether it decides the claim, which requires a reason and a current assessment. */
    public boolean decides() {
        return this == APPROVE || this == DECLINE || this == GOODWILL;
    }

    /** Whether the claim is decided after it: a decision, or the confirmation of one. */
    public boolean grants() {
        return decides() || this == CONFIRM;
    }

    /** Whether only the second person takes it. */
    public boolean seconds() {
        return this == CONFIRM || this == REFUSE;
    }

    /** The action with this identifier, if there is one. */
    public static Optional<ClaimAction> of(String id) {
        return Arrays.stream(values()).filter(action -> action.id.equals(id)).findFirst();
    }
}
