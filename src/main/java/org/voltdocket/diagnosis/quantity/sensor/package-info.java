/**
 * Offset of the vehicle's current sensor: against a clamp, by fitting an equivalent circuit to the voltage, and by the
 * reading while the vehicle sleeps.
 *
 * <p>Imports {@code quantity}, {@code signal} and {@code regime}. Start reading at {@link
 * org.voltdocket.diagnosis.quantity.sensor.OffsetWithoutClamp}.
 */
package org.voltdocket.diagnosis.quantity.sensor;
