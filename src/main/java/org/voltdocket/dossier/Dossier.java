package org.voltdocket.dossier;

import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.assessment.Failure;
import org.voltdocket.assessment.KeptAssessment;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.Relatives;

/**
 * All of a case at one moment, as one actor may see it.
 *
 * @param relatives other cases of the same vehicle or battery
 * @param assessment the latest; empty until the first
 * @param failure why the last change could not be assessed
 * @param workshopNames by id, for the workshops that the case belongs to
 */
public record Dossier(
        CaseFacts file,
        Relatives relatives,
        Optional<KeptAssessment> assessment,
        Optional<Failure> failure,
        Map<UUID, String> workshopNames) {}
