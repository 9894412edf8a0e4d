package org.voltdocket.claim;

import java.time.Instant;

/**
 * The confirmation of a decision above the limit by a second person.
 *
 * @param proposedAt when the first person proposed it
 * @param by who confirmed it; never who proposed it
 */
public record Confirmation(Instant proposedAt, String by) {}
