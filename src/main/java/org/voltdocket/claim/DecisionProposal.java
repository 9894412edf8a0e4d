package org.voltdocket.claim;

import java.time.Instant;
import java.util.UUID;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Sha256;

/**
 * A decision above the limit that waits for a second person.
 *
 * @param kind state of the claim after the confirmation
 * @param limit what one person may grant, at the time of the proposal
 * @param assessment the assessment it is based on; with a newer assessment of the case it cannot be confirmed
 */
public record DecisionProposal(
        ClaimState kind,
        Money paid,
        Money limit,
        String reason,
        Instant at,
        String by,
        UUID assessment,
        Sha256 assessmentSha256,
        String edition,
        Leaning leaning,
        boolean againstLeaning) {

    public static DecisionProposal of(ClaimDecision wanted, Money limit) {
        return new DecisionProposal(
                wanted.kind(),
                wanted.paid(),
                limit,
                wanted.reason(),
                wanted.at(),
                wanted.by(),
                wanted.assessment(),
                wanted.assessmentSha256(),
                wanted.edition(),
                wanted.leaning(),
                wanted.againstLeaning());
    }
}
