package org.voltdocket.claim.repository;

import java.util.Optional;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.claim.DecisionProposal;

/**
 * The latest claim of a case, as found for an actor who may see it.
 *
 * @param proposal a decision that waits for a second person
 */
public record LocatedClaim(CaseReference caseFile, ClaimRepository.Row row, Optional<DecisionProposal> proposal) {}
