package org.voltdocket.claim.repository;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.claim.ClaimTransitions;
import org.voltdocket.claim.Contribution;
import org.voltdocket.claim.DecisionProposal;
import org.voltdocket.kernel.Actor;

/** Assembles a claim with everything that belongs to it, as one actor may see it. */
@Component
public class ClaimAssembler {

    private final ClaimRepository claims;
    private final RequestedItems requestedItems;
    private final DecisionProposalRepository proposals;
    private final DecisionRepository decisions;
    private final ClaimDocumentRepository documents;
    private final ObjectionRepository objections;
    private final ClaimWarranty warranty;

    ClaimAssembler(
            ClaimRepository claims,
            RequestedItems requestedItems,
            DecisionProposalRepository proposals,
            DecisionRepository decisions,
            ClaimDocumentRepository documents,
            ObjectionRepository objections,
            ClaimWarranty warranty) {
        this.claims = claims;
        this.requestedItems = requestedItems;
        this.proposals = proposals;
        this.decisions = decisions;
        this.documents = documents;
        this.objections = objections;
        this.warranty = warranty;
    }

    public Claim assemble(Actor actor, ClaimRepository.Row row) {
        List<ClaimStep> steps = claims.steps(row.id());
        Optional<DecisionProposal> proposal = proposals.waiting(row.id());
        List<Contribution> contributions = claims.contributions(actor, row);
        return new Claim(
                row.id(),
                row.workshop(),
                row.amount(),
                row.state(),
                row.version(),
                row.openedAt(),
                row.openedBy(),
                allowed(actor, row.state(), proposal, contributions.isEmpty()),
                visible(actor, steps),
                requestedItems.of(row.id(), row.caseId(), steps),
                documents.digests(row.id()),
                proposal.filter(waiting -> !actor.isWorkshop()),
                decisions.of(row.id()),
                row.use(),
                warranty.of(row),
                claims.place(row),
                objections.of(row.id()),
                contributions);
    }

    private static List<ClaimAction> allowed(
            Actor actor, ClaimState state, Optional<DecisionProposal> proposal, boolean mayDecide) {
        return ClaimTransitions.from(state, proposal.map(DecisionProposal::kind)).stream()
                .filter(action -> action.isFor(actor.role()))
                .filter(action -> mayDecide || !action.grants())
                .filter(action ->
                        !action.seconds() || !proposal.orElseThrow().by().equals(actor.user()))
                .toList();
    }

    /** A workshop does not see proposed decisions and their refusals, which leave the state as it is. */
    private static List<ClaimStep> visible(Actor actor, List<ClaimStep> steps) {
        return steps.stream()
                .filter(step -> !actor.isWorkshop() || step.from() != step.to())
                .toList();
    }
}
