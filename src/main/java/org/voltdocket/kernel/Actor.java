package org.voltdocket.kernel;

import java.util.Optional;
import java.util.UUID;

/**
 * The account that reads or acts. Every query for users takes one.
 *
 * @param user account name, or {@code system} for the server itself
 * @param role what it may do
 * @param workshop the workshop the account belongs to; present exactly for {@link Role#WORKSHOP}
 */
public record Actor(String user, Role role, Optional<UUID> workshop) {

    public Actor {
        if (user == null || user.isBlank() || role == null || workshop == null) {
            throw new IllegalArgumentException("an actor has a user, a role and, for a workshop, its workshop");
        }
        if (role.isWorkshop() != workshop.isPresent()) {
            throw new IllegalArgumentException("exactly the role WORKSHOP has a workshop");
        }
    }

    /** The server itself, as in start-up work and re-runs. */
    public static Actor system() {
        return new Actor("system", Role.ADMIN, Optional.empty());
    }

    /** Whether this actor may see what belongs to the workshop; a case without a workshop belongs to the distributor. */
    public boolean sees(Optional<UUID> owner) {
        return !role.isWorkshop() || owner.isPresent() && owner.equals(workshop);
    }

    /** Whether this actor acts for a workshop and sees the workshop's own cases only. */
    public boolean isWorkshop() {
        return role.isWorkshop();
    }

    /** Whether this actor may decide claims, answer objections and enter supplier recoveries. */
    public boolean canDecideClaims() {
        return role.canDecideClaims();
    }

    /** Whether this actor may receive and test returned batteries, record outcomes and verify the trail. */
    public boolean canAudit() {
        return role.canAudit();
    }

    /** Whether this actor may open cases, edit facts and upload evidence to a case. */
    public boolean canEditCases() {
        return role.canEditCases();
    }

    /** Whether this actor may manage accounts, editions of the rule book, warranty terms and settings. */
    public boolean canAdminister() {
        return role.canAdminister();
    }
}
