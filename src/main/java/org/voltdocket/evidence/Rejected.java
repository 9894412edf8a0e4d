package org.voltdocket.evidence;

import org.voltdocket.diagnosis.read.RejectedFile;

/** The file was rejected. Nothing of it was stored; the trail records the rejection. */
public record Rejected(RejectedFile file) implements IntakeResult {}
