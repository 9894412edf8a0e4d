package org.voltdocket.assessment.rerun;

/** A case that could not be judged, and why. */
public record FailedCase(String number, String reason) {}
