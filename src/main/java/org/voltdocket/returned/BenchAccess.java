package org.voltdocket.returned;

import org.springframework.security.access.AccessDeniedException;
import org.voltdocket.kernel.Actor;

/** Access to returned batteries: actors who may audit. */
public final class BenchAccess {

    private BenchAccess() {}

    public static void require(Actor actor) {
        if (!actor.canAudit()) {
            throw new AccessDeniedException("returned batteries are the auditor's");
        }
    }
}
