/**
 * Measured quantities: the register of all quantities, what test records and facts measure, and the signals of a drive on a
 * common time grid.
 *
 * <p>Subpackages: {@code sensor} (offset of the vehicle's current sensor), {@code drive} (drive recordings), {@code bench}
 * (cranking and discharge recordings), {@code standing} (recordings of a parked vehicle). This package imports none of
 * them. Start reading at {@link org.voltdocket.diagnosis.quantity.Quantities}.
 */
package org.voltdocket.diagnosis.quantity;
