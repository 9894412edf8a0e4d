package org.voltdocket.claim;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.voltdocket.kernel.Role;

/** The steps of a claim, and the roles that take them. */
public enum ClaimAction {
    SUBMIT("submit", Role.WORKSHOP),
    TAKE("take", Role.CLERK, Role.ADMIN),
    ASK("ask", Role.CLERK, Role.ADMIN),
    ANSWER("answer", Role.WORKSHOP),
    APPROVE("approve", Role.CLERK, Role.ADMIN),
    DECLINE("decline", Role.CLERK, Role.ADMIN),
    GOODWILL("goodwill", Role.CLERK, Role.ADMIN),
    /** Confirms a decision that waits for a second person. */
    CONFIRM("confirm", Role.CLERK, Role.ADMIN),
    /** Refuses a decision that waits for a second person. */
    REFUSE("refuse", Role.CLERK, Role.ADMIN),
    SETTLE("settle", Role.CLERK, Role.ADMIN),
    WITHDRAW("withdraw", Role.WORKSHOP);

    private final String id;
    private final Set<Role> roles;

    ClaimAction(String id, Role first, Role... others) {
        this.id = id;
        this.roles = EnumSet.of(first, others);
    }

    /** The stable identifier used in addresses and in JSON. */
    public String id() {
        return id;
    }

    /** Whether this role may take the step. A workshop takes steps of its own claims only. */
    public boolean isFor(Role role) {
        return roles.contains(role);
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
