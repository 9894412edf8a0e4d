package org.voltdocket.privacy;

import java.time.Instant;

/** A legal hold that has not been released. */
public record Hold(String number, String reason, Instant at, String by) {}
