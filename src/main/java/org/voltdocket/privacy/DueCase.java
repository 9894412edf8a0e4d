package org.voltdocket.privacy;

import java.time.Instant;

/**
 * A case whose retention period has ended.
 *
 * @param number of the case
 * @param part what is to be erased
 * @param lastActivity the latest of opening, evidence and claim
 * @param held whether a legal hold prevents the erasure
 */
public record DueCase(String number, ErasurePart part, Instant lastActivity, boolean held) {}
