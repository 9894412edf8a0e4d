/**
 * Engine starts, engine state and the regimes that cover a recording.
 *
 * <p>Imports {@code signal} and the judge's records. Start reading at {@link
 * org.voltdocket.diagnosis.regime.Regimes}.
 */
package org.voltdocket.diagnosis.regime;
