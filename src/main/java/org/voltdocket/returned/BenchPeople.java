package org.voltdocket.returned;

import org.springframework.security.access.AccessDeniedException;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;

/** Who handles returned batteries: the distributor's auditor and administrator. */
final class BenchPeople {

    private BenchPeople() {}

    static void require(Actor actor) {
        if (actor.role() != Role.AUDITOR && actor.role() != Role.ADMIN) {
            throw new AccessDeniedException("returned batteries are the auditor's");
        }
    }
}
