package org.voltdocket.assessment;

import java.time.Instant;
import java.util.UUID;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.kernel.Sha256;

/**
 * A stored assessment.
 *
 * @param rulebookSha256 digest of the rule book's file
 * @param inputSha256 digest of the facts, history and evidence it is based on
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
        Assessment assessment) {

    boolean hasInput(Sha256 rulebook, Sha256 input) {
        return rulebookSha256.equals(rulebook) && inputSha256.equals(input);
    }
}
