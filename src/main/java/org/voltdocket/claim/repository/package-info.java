/**
 * Reads and writes the tables of claims.
 *
 * <p>{@link org.voltdocket.claim.repository.ClaimLocator} finds and locks the claim of a case, {@link
 * org.voltdocket.claim.repository.ClaimAssembler} puts it together as one actor may see it, and one repository per table appends
 * rows. Access is checked by the packages {@code service} and {@code web}.
 */
package org.voltdocket.claim.repository;
