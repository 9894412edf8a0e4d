package org.voltdocket.returned;

import org.springframework.security.access.AccessDeniedException;
import org.voltdocket.kernel.Actor;

/** Who handles returned batteries: the distributor's auditor and administrator. */
final class BenchAccess {

    private BenchAccess() {}

    static void require(Actor actor) {
        if (!actor.canAudit()) {
            throw new AccessDeniedException("returned batteries are the auditor's");
        }
    }
}
