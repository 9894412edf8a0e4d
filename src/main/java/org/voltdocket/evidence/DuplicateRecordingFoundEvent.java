package org.voltdocket.evidence;

import java.util.UUID;

/** News: a recording of this case was found again in another one. Published in the transaction that keeps the finding. */
public record DuplicateRecordingFoundEvent(UUID caseId) {}
