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
 * @param workshop whose claim it is
 * @param asked what the workshop asks for
 * @param version raised by every step
 * @param allowed the steps that this actor may take now
 * @param steps oldest first
 * @param wanted what was asked for last, with what came; empty where nothing was
 * @param use how the vehicle is used, as the workshop said
 * @param warranty what it is worth by the warranty terms; as reckoned for the decision once there is one
 * @param papers digests of what was printed of the decision
 * @param place which claim of the case it is, from 1
 * @param objections of the workshop to the decision, oldest first
 * @param proposal a decision that waits for a second person
 */
public record Claim(
        UUID id,
        UUID workshop,
        Money asked,
        ClaimState state,
        long version,
        Instant openedAt,
        String openedBy,
        List<ClaimAction> allowed,
        List<ClaimStep> steps,
        List<RequestedItem> wanted,
        Map<DocumentKind, Sha256> papers,
        Optional<DecisionProposal> proposal,
        Optional<ClaimDecision> decision,
        UseClass use,
        WarrantyCalculation warranty,
        int place,
        List<Objection> objections) {

    public Claim {
        allowed = List.copyOf(allowed);
        steps = List.copyOf(steps);
        wanted = List.copyOf(wanted);
        objections = List.copyOf(objections);
    }

    /** The objection that waits for its answer. */
    public Optional<Objection> objected() {
        return objections.stream().filter(Objection::open).findFirst();
    }

    /** What happened last; empty for a claim just opened. */
    public Optional<ClaimStep> lastStep() {
        return steps.isEmpty() ? Optional.empty() : Optional.of(steps.get(steps.size() - 1));
    }

    /** What the distributor waits for; empty but in {@link ClaimState#EVIDENCE_ASKED}. */
    public List<String> awaited() {
        return state == ClaimState.EVIDENCE_ASKED
                ? wanted.stream().map(RequestedItem::said).toList()
                : List.of();
    }

    /** Whether one of the steps open to the actor decides. */
    public boolean mayDecide() {
        return allowed.stream().anyMatch(ClaimAction::decides);
    }
}
