package org.voltdocket.claim;

import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.Sha256;

/**
 * A decision and what it rests on.
 *
 * @param kind approved, declined or goodwill
 * @param paid what is paid; nothing where declined
 * @param assessmentSha256 digest of the assessment's JSON as kept
 * @param edition rule book of the assessment
 * @param leaning what the assessment leaned to
 * @param againstLeaning whether the leaning does not carry the decision
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
        Map<UUID, Sha256> evidence) {}
