package org.voltdocket.kernel;

import java.util.Optional;
import java.util.UUID;

/**
 * Who is looking or acting. Every public query takes one.
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
        if ((role == Role.WORKSHOP) != workshop.isPresent()) {
            throw new IllegalArgumentException("exactly the role WORKSHOP has a workshop");
        }
    }

    /** The server itself, as in start-up work and re-runs. */
    public static Actor system() {
        return new Actor("system", Role.ADMIN, Optional.empty());
    }

    /** Whether this actor may see what belongs to the workshop; a case without a workshop belongs to the distributor. */
    public boolean sees(Optional<UUID> owner) {
        return role != Role.WORKSHOP || owner.isPresent() && owner.equals(workshop);
    }
}
