package org.voltdocket.claim;

import java.time.Instant;
import java.util.UUID;

/**
 * A claim was opened, took a step, or got an objection or an answer to one. Published in the transaction of the change.
 *
 * @param state of the claim after the change
 */
public record ClaimChangedEvent(UUID caseId, UUID claimId, ClaimState state, Instant at) {}
