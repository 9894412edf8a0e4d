package org.voltdocket.trail;

import java.time.Instant;
import java.util.Map;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Sha256;

/**
 * One thing that happened.
 *
 * @param position its place in the chain, from 1, without gap
 * @param at when, to the microsecond
 * @param act what was done, such as {@code evidence-kept}
 * @param subject what it was done to; of a case its number
 * @param details what else is known, in the order of its names
 */
public record TrailEntry(
        long position, Instant at, Actor actor, String act, String subject, Map<String, Object> details, Sha256 hash) {}
