/**
 * Recordings made comparable: a working grid, robust statistics, the delay of slow channels.
 *
 * <p>Offers {@link org.voltdocket.diagnosis.signal.Grid} to the other rooms of the judge; imports the judge's records
 * and {@code kernel} only. Start reading at {@code Grid}.
 */
package org.voltdocket.diagnosis.signal;
