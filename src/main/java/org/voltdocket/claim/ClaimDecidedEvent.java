package org.voltdocket.claim;

import java.util.UUID;
import org.voltdocket.kernel.CaseNumber;

/**
 * A claim was decided. Published in the transaction of the decision, before its trail entry. A listener prints the documents of
 * the decision and stores them by {@link ClaimDocumentRepository}; without them the decision fails.
 *
 * @param workshop whose claim it is; the papers show what it may see
 */
public record ClaimDecidedEvent(UUID claim, CaseNumber number, UUID workshop) {}
