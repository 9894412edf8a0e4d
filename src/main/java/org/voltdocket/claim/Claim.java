package org.voltdocket.claim;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.warranty.UseClass;
import org.voltdocket.warranty.WarrantyCalculation;

/**
 * A claim as one actor may see it.
 *
 * @param workshop that claims
 * @param amount that the workshop claims
 * @param version increased by every step
 * @param allowed the actions that this actor may take now
 * @param steps oldest first
 * @param requestedItems of the latest evidence request, with their answers; empty if nothing was requested
 * @param use of the vehicle, as stated by the workshop
 * @param warranty the amount due by the warranty terms; frozen by the decision
 * @param papers digests of the documents of the decision
 * @param place of the claim among the claims of its case, from 1
 * @param objections of the workshop to the decision, oldest first
 * @param proposal a decision that waits for a second person
 * @param contributions what this actor contributed to the case and therefore may not decide the claim; empty for a workshop
 */
public record Claim(
        UUID id,
        UUID workshop,
        Money amount,
        ClaimState state,
        long version,
        Instant openedAt,
        String openedBy,
        List<ClaimAction> allowed,
        List<ClaimStep> steps,
        List<RequestedItem> requestedItems,
        Map<DocumentKind, Sha256> papers,
        Optional<DecisionProposal> proposal,
        Optional<ClaimDecision> decision,
        UseClass use,
        WarrantyCalculation warranty,
        int place,
        List<Objection> objections,
        List<Contribution> contributions) {

    public Claim {
        allowed = List.copyOf(allowed);
        steps = List.copyOf(steps);
        requestedItems = List.copyOf(requestedItems);
        objections = List.copyOf(objections);
        contributions = List.copyOf(contributions);
    }

    /** The objection that is not answered yet. */
    public Optional<Objection> openObjection() {
        return objections.stream().filter(Objection::open).findFirst();
    }

    /** The latest step; empty for a new claim. */
    public Optional<ClaimStep> lastStep() {
        return steps.isEmpty() ? Optional.empty() : Optional.of(steps.get(steps.size() - 1));
    }

    /** The items that the distributor waits for; empty in other states than {@link ClaimState#EVIDENCE_ASKED}. */
    public List<String> awaited() {
        return state == ClaimState.EVIDENCE_ASKED
                ? requestedItems.stream().map(RequestedItem::name).toList()
                : List.of();
    }
}
