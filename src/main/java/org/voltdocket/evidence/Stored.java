package org.voltdocket.evidence;

/** The upload is evidence now. */
public record Stored(EvidenceItem item) implements IntakeResult {}
