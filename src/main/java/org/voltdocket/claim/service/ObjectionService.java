package org.voltdocket.claim.service;

import java.time.Clock;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.Objection;
import org.voltdocket.claim.repository.ClaimLocator;
import org.voltdocket.claim.repository.DecisionRepository;
import org.voltdocket.claim.repository.LocatedClaim;
import org.voltdocket.claim.repository.ObjectionRepository;
import org.voltdocket.claim.view.ClaimConflicts;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.RequestException;

/**
 * Objections of workshops to decisions, and the answers of the distributor. Neither changes the claim. If the decision was wrong,
 * the claim is settled and the workshop opens another one, so that both decisions stay readable.
 */
@Service
@Transactional
public class ObjectionService {

    private final ClaimLocator locator;
    private final DecisionRepository decisions;
    private final ObjectionRepository objections;
    private final ClaimChangeRecorder changes;
    private final Clock clock;

    ObjectionService(
            ClaimLocator locator,
            DecisionRepository decisions,
            ObjectionRepository objections,
            ClaimChangeRecorder changes,
            Clock clock) {
        this.locator = locator;
        this.decisions = decisions;
        this.objections = objections;
        this.changes = changes;
        this.clock = clock;
    }

    /**
     * Objects to the decision on the case's latest claim. For the {@code WORKSHOP} that claims.
     *
     * @throws RequestException (404) if there is no such case or claim for this actor
     * @throws AccessDeniedException for other roles
     * @throws RequestException if the claim is not decided, an objection is open already, or the reason is missing
     */
    public void object(Actor actor, CaseNumber number, String reason) {
        LocatedClaim claim = locator.lock(actor, number);
        if (!actor.isWorkshop()) {
            throw new AccessDeniedException("only the workshop objects");
        }
        String text = FreeText.required("claim-refused", "reason", reason, "states what you consider wrong, and why");
        UUID claimId = claim.row().id();
        ClaimDecision decision =
                decisions.of(claimId).orElseThrow(() -> ClaimConflicts.objection("The claim is not decided yet."));
        if (open(claimId).isPresent()) {
            throw ClaimConflicts.objection("An objection to this decision waits for its answer.");
        }
        Instant at = now();
        objections.keep(claimId, text, at, actor.user());
        changes.objected(actor, claim, decision, at, Map.of("claim.objection", text));
    }

    /**
     * Answers the open objection. For {@code CLERK} and {@code ADMIN}.
     *
     * @throws RequestException (404) if there is no such case or claim for this actor
     * @throws AccessDeniedException for other roles
     * @throws RequestException if no objection is open, or the answer is empty
     */
    public void answer(Actor actor, CaseNumber number, String answer) {
        LocatedClaim claim = locator.lock(actor, number);
        if (!actor.canDecideClaims()) {
            throw new AccessDeniedException("only a clerk answers objections");
        }
        String text = FreeText.required("claim-refused", "reason", answer, "answers the objection");
        Objection objection = open(claim.row().id())
                .orElseThrow(() -> ClaimConflicts.objection("No objection to this decision waits for an answer."));
        Instant at = now();
        objections.answer(objection.id(), text, at, actor.user());
        changes.objectionAnswered(actor, claim, at, Map.of("claim.answer", text));
    }

    private Optional<Objection> open(UUID claimId) {
        return objections.of(claimId).stream().filter(Objection::open).findFirst();
    }

    private Instant now() {
        return clock.instant();
    }
}
