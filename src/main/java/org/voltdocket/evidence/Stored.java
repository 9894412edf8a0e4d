package org.voltdocket.evidence;

/** The file was stored. */
public record Stored(EvidenceItem item) implements IntakeResult {}
