package org.voltdocket.casefile;

import java.util.UUID;

/** A case was opened. Told inside the transaction that opens it. */
public record CaseOpenedEvent(UUID caseId) {}
