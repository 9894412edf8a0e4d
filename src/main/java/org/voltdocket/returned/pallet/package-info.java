/**
 * Pallets that returned batteries arrive on, with their lists of serial numbers.
 *
 * <p>Start reading at {@link org.voltdocket.returned.pallet.PalletService}.
 */
package org.voltdocket.returned.pallet;
