package org.voltdocket.claim.service;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.ClaimStepRequest;
import org.voltdocket.claim.repository.ClaimRepository;

/** What the trail records of a step. */
final class StepDetails {

    private StepDetails() {}

    /** @return a map that further details may be added to */
    static Map<String, Object> of(
            ClaimRepository.Row claim, ClaimState to, ClaimStepRequest request, Optional<ClaimDecision> decision) {
        Map<String, Object> details = new LinkedHashMap<>();
        if (to != claim.state()) {
            details.put("claim.state", Map.of("old", claim.state().id(), "new", to.id()));
        }
        if (request.reason() != null) {
            details.put("claim.reason", request.reason());
        }
        if (!request.requestedItems().isEmpty()) {
            details.put("claim.items", request.requestedItems());
        }
        decision.ifPresent(made -> add(made, details));
        return details;
    }

    private static void add(ClaimDecision decision, Map<String, Object> details) {
        if (decision.needsSecondPerson()) {
            details.put("claim.kind", decision.kind().id());
        }
        details.put("claim.paid", decision.paid().toString());
        decision.limit().ifPresent(limit -> details.put("claim.limit", limit.toString()));
        decision.confirmation().ifPresent(second -> details.put("claim.proposed-by", decision.by()));
        details.put("claim.assessment", decision.assessmentSha256().hex());
        details.put("claim.edition", decision.edition());
        details.put("claim.leaning", decision.leaning().id());
    }
}
