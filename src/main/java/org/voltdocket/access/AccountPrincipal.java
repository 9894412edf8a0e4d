package org.voltdocket.access;

import java.io.Serializable;
import java.util.Optional;
import java.util.UUID;
import org.springframework.security.core.AuthenticatedPrincipal;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;

/**
 * The principal of a session or of a call with a token.
 *
 * @param account the account's key
 * @param actor who acts
 * @param stamp the account's stamp at sign-in; a later one ends the session
 */
public record AccountPrincipal(UUID account, Actor actor, int stamp) implements AuthenticatedPrincipal, Serializable {

    @Override
    public String getName() {
        return actor.user();
    }

    private Object writeReplace() {
        return new Stored(account, actor.user(), actor.role(), actor.workshop().orElse(null), stamp);
    }

    /** The form in which a session stores it; {@code workshop} is null for the distributor's roles. */
    private record Stored(UUID account, String user, Role role, UUID workshop, int stamp) implements Serializable {

        private Object readResolve() {
            return new AccountPrincipal(account, new Actor(user, role, Optional.ofNullable(workshop)), stamp);
        }
    }
}
