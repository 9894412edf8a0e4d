/**
 * Quantities of a drive recording: charge, starts, charging source, regulation, harness, internal resistance.
 *
 * <p>Imports {@code quantity}, {@code quantity.sensor}, {@code signal} and {@code regime}. Start reading at {@link
 * org.voltdocket.diagnosis.quantity.drive.DriveQuantities}.
 */
package org.voltdocket.diagnosis.quantity.drive;
