/**
 * The supplier's side: what the distributor asks back for claims that it approved, and what came back.
 *
 * <p>Offers {@link org.voltdocket.recovery.RecoveryService}: open money by supplier, lists of claims that are frozen with
 * their PDF and CSV, and the supplier's answer to each claim. Whose a battery is tells the catalogue. Lists and answers are
 * appended, never changed. May import what {@code claim} may, and {@code paper}. Start reading at {@link
 * org.voltdocket.recovery.RecoveryService}.
 */
package org.voltdocket.recovery;
