package org.voltdocket.returned.bench;

import java.time.Instant;

/**
 * A recorded action on a step.
 *
 * @param at when it happened
 * @param notedAt when it was recorded
 * @param note null where there is none
 */
public record StepRecord(BenchStep step, StepAction act, Instant at, String by, Instant notedAt, String note) {}
