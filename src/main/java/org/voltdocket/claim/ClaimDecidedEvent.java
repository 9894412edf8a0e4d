package org.voltdocket.claim;

import java.util.UUID;
import org.voltdocket.kernel.CaseNumber;

/**
 * A claim was decided. Published inside the transaction that decides it, before the trail tells of it: whoever prints the
 * papers of the decision keeps them by {@link ClaimDocumentRepository}, or the decision is not made.
 *
 * @param workshop whose claim it is; the papers show what it may see
 */
public record ClaimDecidedEvent(UUID claim, CaseNumber number, UUID workshop) {}
