package org.voltdocket.claim.decision;

import java.util.UUID;
import org.voltdocket.kernel.CaseNumber;

/**
 * A claim was decided. Published in the transaction of the decision, before its trail entry. A listener prints the documents of
 * the decision and stores them in the claim; without them the decision fails.
 *
 * @param workshop whose claim it is; the papers show what it may see
 */
public record ClaimDecidedEvent(UUID claim, CaseNumber number, UUID workshop) {}
