package org.voltdocket.returned.bench;

import java.time.Instant;

/**
 * What was noted of a step.
 *
 * @param at when it happened
 * @param notedAt when it was noted
 * @param note null where there is none
 */
public record StepRecord(BenchStep step, StepAction act, Instant at, String by, Instant notedAt, String note) {}
