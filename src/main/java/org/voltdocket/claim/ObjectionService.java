package org.voltdocket.claim;

import java.time.Clock;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.NotFoundException;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.trail.Trail;

/**
 * A workshop objects to the decision on its claim, and the distributor answers. Neither moves the claim or reopens anything: where
 * the decision was wrong, it is settled and the workshop claims anew, so that both decisions stay readable.
 */
@Service
@Transactional
public class ObjectionService {

    private static final int MOST = 2000;

    private final ClaimRepository claims;
    private final DecisionRepository decisions;
    private final ObjectionRepository store;
    private final ClaimMailer notices;
    private final ApplicationEventPublisher events;
    private final CaseService cases;
    private final Trail trail;
    private final Clock clock;

    ObjectionService(
            ClaimRepository claims,
            DecisionRepository decisions,
            ObjectionRepository store,
            ClaimMailer notices,
            ApplicationEventPublisher events,
            CaseService cases,
            Trail trail,
            Clock clock) {
        this.claims = claims;
        this.decisions = decisions;
        this.store = store;
        this.notices = notices;
        this.events = events;
        this.cases = cases;
        this.trail = trail;
        this.clock = clock;
    }

    /**
     * Objects to the decision on the case's latest claim. For {@code WORKSHOP}, its own.
     *
     * @throws NotFoundException if there is no such case or claim for this actor
     * @throws AccessDeniedException for other roles
     * @throws ClaimConflictException if it is not decided, or an objection waits for its answer
     * @throws RequestException if it gives no reason
     */
    public void object(Actor actor, CaseNumber number, String reason) {
        CaseReference ref = cases.require(actor, number);
        ClaimRepository.Row claim = locked(actor, ref);
        if (!actor.isWorkshop()) {
            throw new AccessDeniedException("the workshop objects");
        }
        String said = text(reason, "says what you hold to be wrong, and why");
        ClaimDecision decision = decisions
                .of(claim.id())
                .orElseThrow(() -> ClaimConflictException.objection("The claim is not decided yet."));
        if (waiting(claim).isPresent()) {
            throw ClaimConflictException.objection("An objection to this decision waits for its answer.");
        }
        Instant at = now();
        store.keep(claim.id(), said, at, actor.user());
        events.publishEvent(new ClaimChangedEvent(ref.id()));
        notices.tellObjection(number, decision);
        trail.record(actor, "claim-objection", number.value(), Map.of("claim.objection", said));
    }

    /**
     * Answers the objection that waits. For {@code CLERK} and {@code ADMIN}.
     *
     * @throws NotFoundException if there is no such case or claim for this actor
     * @throws AccessDeniedException for other roles
     * @throws ClaimConflictException if none waits
     * @throws RequestException if the answer is empty
     */
    public void answer(Actor actor, CaseNumber number, String answer) {
        CaseReference ref = cases.require(actor, number);
        ClaimRepository.Row claim = locked(actor, ref);
        if (!actor.canDecideClaims()) {
            throw new AccessDeniedException("a clerk answers objections");
        }
        String said = text(answer, "answers the objection");
        Objection objection = waiting(claim)
                .orElseThrow(
                        () -> ClaimConflictException.objection("No objection to this decision waits for an answer."));
        store.answer(objection.id(), said, now(), actor.user());
        events.publishEvent(new ClaimChangedEvent(ref.id()));
        notices.tellAnswer(number, claim.workshop());
        trail.record(actor, "claim-objection-answered", number.value(), Map.of("claim.answer", said));
    }

    private ClaimRepository.Row locked(Actor actor, CaseReference ref) {
        return claims.lockLatest(ref.id())
                .filter(row -> actor.sees(Optional.of(row.workshop())))
                .orElseThrow(() -> new NotFoundException("claim of case " + ref.number()));
    }

    private Optional<Objection> waiting(ClaimRepository.Row claim) {
        return store.of(claim.id()).stream().filter(Objection::open).findFirst();
    }

    private static String text(String given, String what) {
        String text = given == null ? "" : given.strip();
        if (text.isEmpty() || text.length() > MOST || text.indexOf(0) >= 0) {
            throw RequestException.invalid(
                    "claim-refused", "reason", "'reason' " + what + ", in 1 to " + MOST + " characters");
        }
        return text;
    }

    private Instant now() {
        return clock.instant();
    }
}
