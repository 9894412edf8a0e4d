package org.voltdocket.claim;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.voltdocket.kernel.Role;

/** What can be done with a claim, and by whom. */
public enum ClaimAction {
    SUBMIT("submit", Role.WORKSHOP),
    TAKE("take", Role.CLERK, Role.ADMIN),
    ASK("ask", Role.CLERK, Role.ADMIN),
    ANSWER("answer", Role.WORKSHOP),
    APPROVE("approve", Role.CLERK, Role.ADMIN),
    DECLINE("decline", Role.CLERK, Role.ADMIN),
    GOODWILL("goodwill", Role.CLERK, Role.ADMIN),
    /** Makes a decision good that waits for a second person. */
    CONFIRM("confirm", Role.CLERK, Role.ADMIN),
    /** Sends a decision that waits back to review. */
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

    /** Whether this role takes such steps. A workshop takes them for its own claims only. */
    public boolean isFor(Role role) {
        return roles.contains(role);
    }

    /** Whether it decides the claim, and so needs a reason and an assessment to rest on. */
    public boolean decides() {
        return this == APPROVE || this == DECLINE || this == GOODWILL;
    }

    /** Whether it is the second person's. */
    public boolean seconds() {
        return this == CONFIRM || this == REFUSE;
    }

    /** The action with this identifier, if there is one. */
    public static Optional<ClaimAction> of(String id) {
        return Arrays.stream(values()).filter(action -> action.id.equals(id)).findFirst();
    }
}
