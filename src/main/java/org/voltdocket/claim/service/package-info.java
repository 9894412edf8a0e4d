/**
 * Use cases of claims, one service each.
 *
 * <p>{@link org.voltdocket.claim.service.ClaimService} reads claims; {@link org.voltdocket.claim.service.ClaimStepService} opens
 * them and takes steps, decisions among them; {@link org.voltdocket.claim.service.EvidenceRequestService} takes answers to evidence
 * requests; {@link org.voltdocket.claim.service.ObjectionService} objections. {@code ClaimChangeRecorder} writes trail, mail and
 * event of each change. Start reading at {@code ClaimStepService.act}.
 */
package org.voltdocket.claim.service;
