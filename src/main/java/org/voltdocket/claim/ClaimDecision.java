package org.voltdocket.claim;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Sha256;

/**
 * A decision and what it rests on.
 *
 * @param kind approved, declined or goodwill
 * @param by who decided; where a second person was needed, who proposed
 * @param at when it became good
 * @param paid what is paid; nothing where declined
 * @param assessmentSha256 digest SHA-256 of the stored assessment
 * @param edition rule book of the assessment
 * @param leaning what the assessment leaned to
 * @param againstLeaning whether the leaning does not carry the decision
 * @param limit what one person could grant then; empty where there was no limit
 * @param confirmation the second person; empty where none was needed
 * @param evidence digests of all that the case held, by id
 */
public record ClaimDecision(
        ClaimState kind,
        Money paid,
        String reason,
        Instant at,
        String by,
        UUID assessment,
        Sha256 assessmentSha256,
        String edition,
        Leaning leaning,
        boolean againstLeaning,
        Optional<Money> limit,
        Optional<Confirmation> confirmation,
        Map<UUID, Sha256> evidence) {

    /** Whether it pays more than one person may grant and is not confirmed yet. */
    public boolean needsSecondPerson() {
        return confirmation.isEmpty()
                && limit.filter(most -> paid.amount().compareTo(most.amount()) > 0)
                        .isPresent();
    }
}
