package org.voltdocket.casefile;

import java.time.Instant;
import java.util.Optional;

/**
 * A case as a list shows it.
 *
 * @param standing empty until the first assessment
 * @param state state of its claim, {@code none} where there is no claim
 */
public record CaseListItem(CaseReference ref, Instant openedAt, Optional<AssessmentSummary> standing, String state) {

    /** State of a case that has no claim. */
    public static final String NO_CLAIM = "none";
}
