/**
 * Claims of workshops: their steps, the decisions of the distributor, objections, and what a decision is based on.
 *
 * <p>{@link org.voltdocket.claim.ClaimService} reads claims; {@link org.voltdocket.claim.ClaimStepService} opens them and takes
 * steps, decisions among them; {@link org.voltdocket.claim.EvidenceRequestService} takes answers to evidence requests; {@link
 * org.voltdocket.claim.ObjectionService} objections. {@link org.voltdocket.claim.ClaimTransitions} defines which state allows
 * which step, {@link org.voltdocket.claim.ClaimAction} which role takes it. Steps and decisions are appended, never changed.
 * Triggers maintain one row per claim for lists ({@code V054__claim_list.sql}). Higher packages are notified by {@link
 * org.voltdocket.claim.ClaimChangedEvent}. Start reading at {@code ClaimStepService.act}.
 */
package org.voltdocket.claim;
