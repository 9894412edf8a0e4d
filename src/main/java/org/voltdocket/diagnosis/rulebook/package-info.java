/**
 * Limits as data: reads an edition, sets measurements against its rows, says each finding in a sentence.
 *
 * <p>Imports {@code quantity}, the judge's records and {@code kernel}. Start reading at {@link
 * org.voltdocket.diagnosis.rulebook.Rule}.
 */
package org.voltdocket.diagnosis.rulebook;
