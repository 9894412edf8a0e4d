package org.voltdocket.assessment;

import java.time.Instant;

/**
 * The judge could not finish; the evidence is kept, and the next event or "judge again" tries once more.
 *
 * @param reason one sentence
 */
public record AssessmentFailure(Instant failedAt, String reason) {}
