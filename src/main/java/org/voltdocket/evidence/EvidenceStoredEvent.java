package org.voltdocket.evidence;

import java.util.UUID;

/** News: the case has one item of evidence more. Published in the transaction that keeps it. */
public record EvidenceStoredEvent(UUID caseId, UUID evidenceId) {}
