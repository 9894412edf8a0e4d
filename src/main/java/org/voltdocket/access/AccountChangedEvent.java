package org.voltdocket.access;

import java.util.Map;
import org.voltdocket.kernel.Actor;

/**
 * Something about an account, a workshop or a token changed. Published inside the transaction that changes it.
 *
 * @param act what was done, as the trail names it
 * @param subject the account or workshop
 * @param details what was made or changed; a change as {@code old} and {@code new}, and never a secret
 */
public record AccountChangedEvent(Actor actor, String act, String subject, Map<String, Object> details) {

    public AccountChangedEvent {
        details = Map.copyOf(details);
    }
}
