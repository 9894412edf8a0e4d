package org.voltdocket.assessment;

import java.time.Instant;
import java.util.Optional;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.diagnosis.Assessment;

/**
 * The assessment of a case by an edition that may differ from the one in force.
 *
 * @param before the latest stored assessment; empty if there is none
 * @param after the assessment by the edition
 * @param keptAt when {@code after} was stored before; empty if it is new
 */
public record ReassessmentResult(
        CaseReference ref, Optional<Assessment> before, Assessment after, Optional<Instant> keptAt) {}
