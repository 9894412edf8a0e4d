/**
 * Decisions: probabilities of the causes, verdict on the battery, leaning, missing evidence and facts, next steps.
 *
 * <p>Imports {@code rulebook}, {@code quantity}, the records of {@code diagnosis} and {@code kernel}. Start reading at {@link
 * org.voltdocket.diagnosis.cause.CauseRanking}.
 */
package org.voltdocket.diagnosis.cause;
