package org.voltdocket.claim;

import java.util.Optional;
import org.voltdocket.casefile.CaseReference;

/**
 * The latest claim of a case, as found for an actor who may see it.
 *
 * @param proposal a decision that waits for a second person
 */
record LocatedClaim(CaseReference caseFile, ClaimRepository.Row row, Optional<DecisionProposal> proposal) {}
