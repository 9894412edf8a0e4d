package org.voltdocket.casefile;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.diagnosis.Facts;

/**
 * A case with all that is known of it.
 *
 * @param openedBy account that opened it
 * @param workshops every workshop it belongs to, the one that opened it first
 * @param version counts the changes of facts, from 0; the entity tag is made of it
 * @param standing empty until the first assessment
 */
public record CaseFacts(
        CaseReference ref,
        Facts facts,
        Instant openedAt,
        String openedBy,
        List<UUID> workshops,
        long version,
        Optional<AssessmentSummary> standing) {

    public CaseFacts {
        workshops = List.copyOf(workshops);
    }
}
