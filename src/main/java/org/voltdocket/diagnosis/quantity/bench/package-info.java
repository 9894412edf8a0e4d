/**
 * Quantities of cranking recordings and of capacity runs.
 *
 * <p>Imports {@code quantity}, {@code signal} and {@code regime}. Start reading at {@link
 * org.voltdocket.diagnosis.quantity.bench.BenchQuantities}.
 */
package org.voltdocket.diagnosis.quantity.bench;
