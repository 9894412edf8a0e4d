/**
 * Recoveries: lists of approved claims that the distributor sends to a supplier, and the answer of the supplier to each claim.
 *
 * <p>Offers {@link org.voltdocket.recovery.RecoveryService}: balances by supplier, lists that are stored with their PDF and CSV,
 * and answers. The catalogue names the supplier of a battery. Lists and answers are appended, never changed. Start reading at
 * {@link org.voltdocket.recovery.RecoveryService}.
 */
package org.voltdocket.recovery;
