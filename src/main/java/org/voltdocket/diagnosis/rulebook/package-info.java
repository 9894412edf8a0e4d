/**
 * The rule book: parses an edition, evaluates its rules for measurements, words each finding.
 *
 * <p>Imports {@code quantity}, the records of {@code diagnosis} and {@code kernel}. Start reading at {@link
 * org.voltdocket.diagnosis.rulebook.Rule}.
 */
package org.voltdocket.diagnosis.rulebook;
