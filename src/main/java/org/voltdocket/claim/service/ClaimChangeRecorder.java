package org.voltdocket.claim.service;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimChangedEvent;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.claim.repository.ClaimAssembler;
import org.voltdocket.claim.repository.ClaimRepository;
import org.voltdocket.claim.repository.LocatedClaim;
import org.voltdocket.kernel.Actor;
import org.voltdocket.trail.Trail;

/**
 * Finishes each change of a claim: copies the state to the case, notifies higher packages, writes mail and the trail entry. The
 * trail comes last, because its lock serializes all transactions that write to it.
 */
@Component
class ClaimChangeRecorder {

    private final ClaimRepository claims;
    private final ClaimAssembler assembler;
    private final CaseService cases;
    private final ApplicationEventPublisher events;
    private final ClaimMailer mailer;
    private final Trail trail;

    ClaimChangeRecorder(
            ClaimRepository claims,
            ClaimAssembler assembler,
            CaseService cases,
            ApplicationEventPublisher events,
            ClaimMailer mailer,
            Trail trail) {
        this.claims = claims;
        this.assembler = assembler;
        this.cases = cases;
        this.events = events;
        this.mailer = mailer;
        this.trail = trail;
    }

    Claim opened(Actor actor, LocatedClaim claim, Instant at, Map<String, Object> details) {
        return finish(actor, claim, "claim-opened", at, details);
    }

    Claim stepTaken(Actor actor, LocatedClaim claim, ClaimAction action, Instant at, Map<String, Object> details) {
        List<ClaimStep> steps = claims.steps(claim.row().id());
        ClaimStep step = steps.get(steps.size() - 1);
        mailer.stepTaken(claim.caseFile().number(), claim.row().workshop(), step, steps);
        String act = step.isProposal() ? "claim-propose" : "claim-" + action.id();
        return finish(actor, claim, act, at, details);
    }

    void objected(Actor actor, LocatedClaim claim, ClaimDecision decision, Instant at, Map<String, Object> details) {
        mailer.objected(claim.caseFile().number(), decision);
        finish(actor, claim, "claim-objection", at, details);
    }

    void objectionAnswered(Actor actor, LocatedClaim claim, Instant at, Map<String, Object> details) {
        mailer.objectionAnswered(claim.caseFile().number(), claim.row().workshop());
        finish(actor, claim, "claim-objection-answered", at, details);
    }

    private Claim finish(Actor actor, LocatedClaim claim, String act, Instant at, Map<String, Object> details) {
        ClaimRepository.Row row = claims.require(claim.row().id());
        cases.saveClaimState(row.caseId(), row.state().id());
        events.publishEvent(new ClaimChangedEvent(row.caseId(), row.id(), row.state(), at));
        trail.record(actor, act, claim.caseFile().number().value(), details);
        return assembler.assemble(actor, row);
    }
}
