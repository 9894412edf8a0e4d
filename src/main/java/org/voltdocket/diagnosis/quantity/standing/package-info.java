/**
 * Quantities of a recording of a parked vehicle: drain, wake-ups, and the current sensor asleep.
 *
 * <p>Imports {@code quantity} and {@code signal}. Start reading at {@link
 * org.voltdocket.diagnosis.quantity.standing.StandingQuantities}.
 */
package org.voltdocket.diagnosis.quantity.standing;
