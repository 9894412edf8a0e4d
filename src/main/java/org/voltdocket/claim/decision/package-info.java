/**
 * Decisions on claims and the limits above which a second person confirms.
 *
 * <p>{@link org.voltdocket.claim.decision.DecisionFactory} checks a decision and collects what it is based on; {@link
 * org.voltdocket.claim.decision.DecisionRecorder} stores it and publishes {@link
 * org.voltdocket.claim.decision.ClaimDecidedEvent}, for which {@code dossier.letter} prints the documents in the same transaction.
 * {@link org.voltdocket.claim.decision.ClaimLimits} keeps the limits.
 */
package org.voltdocket.claim.decision;
