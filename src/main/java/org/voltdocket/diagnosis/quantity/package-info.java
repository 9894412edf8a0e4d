/**
 * One class per measured quantity, each with its unit, its formula's source and its 95 % interval.
 *
 * <p>Imports {@code signal}, {@code regime}, the judge's records and {@code kernel}. Start reading at {@link
 * org.voltdocket.diagnosis.quantity.Measurement}, then {@link org.voltdocket.diagnosis.quantity.Quantities}, the list of
 * all of them.
 */
package org.voltdocket.diagnosis.quantity;
