package org.voltdocket.assessment;

import java.time.Instant;
import java.util.UUID;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.kernel.Sha256;

/**
 * One assessment as kept.
 *
 * @param rulebookSha256 digest of the rule book's file
 * @param inputSha256 digest of the facts, history and evidence it rests on
 * @param body the JSON exactly as served
 * @param assessment the same as a value
 */
public record StoredAssessment(
        UUID id,
        UUID caseId,
        Sha256 rulebookSha256,
        Sha256 inputSha256,
        Instant assessedAt,
        String body,
        Assessment assessment) {}
