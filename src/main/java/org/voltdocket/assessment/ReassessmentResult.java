package org.voltdocket.assessment;

import java.time.Instant;
import java.util.Optional;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.diagnosis.Assessment;

/**
 * A case judged by an edition that need not be the one in force.
 *
 * @param before what its latest kept assessment says; empty where there is none
 * @param after what the edition says of the case as it is now
 * @param keptAt when the assessment {@code after} was kept; empty where it was worked out and not kept
 */
public record ReassessmentResult(
        CaseReference ref, Optional<Assessment> before, Assessment after, Optional<Instant> keptAt) {}
