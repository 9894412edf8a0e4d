package org.voltdocket.claim;

import java.util.UUID;

/** News: a claim of this case was opened or took a step. Published in the transaction that does it. */
public record ClaimChangedEvent(UUID caseId) {}
