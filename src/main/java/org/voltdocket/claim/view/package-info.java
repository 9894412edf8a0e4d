/**
 * A claim as JSON, and the problem details of requests that do not fit its state.
 *
 * <p>{@link org.voltdocket.claim.view.ClaimView} is the answer of the API, {@link org.voltdocket.claim.view.ClaimConflicts} the
 * refusals, {@link org.voltdocket.claim.view.ConcurrentChanges} what others changed since the caller read the claim.
 */
package org.voltdocket.claim.view;
