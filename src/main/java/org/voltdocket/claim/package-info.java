/**
 * What a workshop asks for a battery, step by step, and what the distributor decides.
 *
 * <p>Offers {@link org.voltdocket.claim.ClaimService} with the records it takes and gives, and {@link
 * org.voltdocket.claim.ClaimView}, a claim as JSON. Which step a state allows stands in {@link
 * org.voltdocket.claim.ClaimTransitions} alone, and who may take it in {@link org.voltdocket.claim.ClaimAction}. Steps and decisions
 * are appended, never changed; a decision names the assessment and the evidence it rests on by their digests.
 * May import {@code kernel}, {@code diagnosis}, {@code access}, {@code trail}, {@code ui}, {@code mail}, {@code casefile}, {@code evidence},
 * {@code assessment}. Start reading at {@link org.voltdocket.claim.ClaimTransitions}.
 */
package org.voltdocket.claim;
