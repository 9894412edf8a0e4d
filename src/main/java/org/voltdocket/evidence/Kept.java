package org.voltdocket.evidence;

/** The upload is evidence now. */
public record Kept(EvidenceItem item) implements Received {}
