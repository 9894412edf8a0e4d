package org.voltdocket.trail.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Actor;
import org.voltdocket.trail.ChainVerification;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailHead;

/** Verifies the chain for a person, which is itself an act that the trail keeps. */
@Component
class TrailVerificationService {

    private final Trail trail;

    TrailVerificationService(Trail trail) {
        this.trail = trail;
    }

    /** @param noted a head as printed, or blank */
    ChainVerification run(Actor actor, String noted) {
        requireAuditor(actor);
        Optional<TrailHead> head =
                noted == null || noted.isBlank() ? Optional.empty() : Optional.of(TrailHead.parse(noted));
        ChainVerification check = trail.verify(head);
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("trail.entries", check.entries());
        details.put("trail.holds", check.holds());
        head.ifPresent(one -> details.put("trail.noted", one.toString()));
        check.head().ifPresent(one -> details.put("trail.head", one.toString()));
        check.firstBroken().ifPresent(broken -> details.put("trail.broken", broken.why()));
        trail.record(actor, "trail-verified", "trail", details);
        return check;
    }

    static void requireAuditor(Actor actor) {
        if (!actor.canAudit()) {
            throw new AccessDeniedException("the whole trail is for auditors and administrators");
        }
    }
}
