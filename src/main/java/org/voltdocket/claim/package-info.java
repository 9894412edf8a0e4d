/**
 * Claims of workshops: the values that describe a claim, its steps, decisions and objections.
 *
 * <p>{@link org.voltdocket.claim.ClaimTransitions} defines which state allows which step, {@link
 * org.voltdocket.claim.ClaimAction} which role takes it. Steps and decisions are appended, never changed. Triggers maintain one
 * row per claim for lists ({@code V054__claim_list.sql}). Higher packages are notified by {@link
 * org.voltdocket.claim.ClaimChangedEvent}. Subpackages: {@code repository} reads and writes the tables, {@code view} is a claim as
 * JSON with its problem details, {@code decision} makes decisions and holds the limits, {@code service} takes steps, answers and
 * objections, {@code deadline} knows working days, {@code web} answers requests. Start reading at {@code ClaimStepService.act} in
 * {@code service}.
 */
package org.voltdocket.claim;
