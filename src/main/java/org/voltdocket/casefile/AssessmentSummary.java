package org.voltdocket.casefile;

import java.time.Instant;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;

/**
 * What the latest assessment says of a case, in the few columns that lists show and filter by.
 *
 * @param probability of {@code firstCause}, 0 to 1
 */
public record AssessmentSummary(
        Leaning leaning, BatteryVerdict verdict, Cause firstCause, double probability, Instant assessedAt) {}
