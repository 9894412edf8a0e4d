package org.voltdocket.privacy;

import java.time.Instant;

/** An erasure. {@code originals} is the number of files whose bytes were removed. */
public record Erased(String number, ErasurePart part, String reason, Instant at, String by, int originals) {}
