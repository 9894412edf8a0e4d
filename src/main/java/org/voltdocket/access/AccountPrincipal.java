package org.voltdocket.access;

import java.io.Serializable;
import java.util.UUID;
import org.springframework.security.core.AuthenticatedPrincipal;
import org.voltdocket.kernel.Actor;

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
}
