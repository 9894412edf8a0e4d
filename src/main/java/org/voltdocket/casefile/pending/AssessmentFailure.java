package org.voltdocket.casefile.pending;

import java.time.Instant;

/**
 * Why a case could not be assessed. Its evidence is kept, and its next change or a manual reassessment tries again.
 *
 * @param reason one sentence
 */
public record AssessmentFailure(Instant failedAt, String reason) {}
