package org.voltdocket.claim.service;

import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.ClaimStepRequest;
import org.voltdocket.claim.ClaimTransitions;
import org.voltdocket.claim.DecisionProposal;
import org.voltdocket.claim.repository.ClaimAssembler;
import org.voltdocket.claim.repository.LocatedClaim;
import org.voltdocket.claim.view.ClaimConflicts;
import org.voltdocket.claim.view.ConcurrentChanges;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;

/** Checks whether a step may be taken now, before anything is changed. */
@Component
class ClaimStepValidator {

    private final ClaimAssembler assembler;
    private final ConcurrentChanges changes;

    ClaimStepValidator(ClaimAssembler assembler, ConcurrentChanges changes) {
        this.assembler = assembler;
        this.changes = changes;
    }

    /**
     * The state that the step leads to.
     *
     * @throws AccessDeniedException if the step is not for this role
     * @throws RequestException if version, state or proposal do not allow the step, or the request is invalid
     */
    ClaimState validate(Actor actor, LocatedClaim claim, ClaimStepRequest request) {
        if (!request.action().isFor(actor.role())) {
            throw new AccessDeniedException("the step is for another role");
        }
        requireVersion(actor, claim, request);
        ClaimState target = ClaimTransitions.after(
                        claim.row().state(), claim.proposal().map(DecisionProposal::kind), request.action())
                .orElseThrow(() -> notAllowed(actor, claim, request));
        if (request.action().seconds() && claim.proposal().orElseThrow().by().equals(actor.user())) {
            throw ClaimConflicts.secondPerson(assembler.assemble(actor, claim.row()));
        }
        if (request.action().grants()) {
            requireOtherDuties(actor, claim);
        }
        request.check();
        return target;
    }

    /** Whoever contributed to the case does not decide it. */
    private void requireOtherDuties(Actor actor, LocatedClaim claim) {
        Claim current = assembler.assemble(actor, claim.row());
        if (!current.contributions().isEmpty()) {
            throw ClaimConflicts.sameDuties(current);
        }
    }

    private void requireVersion(Actor actor, LocatedClaim claim, ClaimStepRequest request) {
        if (request.ifVersion().isPresent()
                && request.ifVersion().getAsLong() != claim.row().version()) {
            Claim current = assembler.assemble(actor, claim.row());
            throw ClaimConflicts.versionChanged(current, changes.since(number(claim), current, request.ifVersion()));
        }
    }

    private RequestException notAllowed(Actor actor, LocatedClaim claim, ClaimStepRequest request) {
        Claim current = assembler.assemble(actor, claim.row());
        return ClaimConflicts.actionNotAllowed(
                current, request.action(), changes.since(number(claim), current, request.ifVersion()));
    }

    private static CaseNumber number(LocatedClaim claim) {
        return claim.caseFile().number();
    }
}
