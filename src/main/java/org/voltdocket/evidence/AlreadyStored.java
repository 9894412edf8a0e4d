package org.voltdocket.evidence;

/** The case has the same bytes already; nothing was added. */
public record AlreadyStored(EvidenceItem item) implements IntakeResult {}
