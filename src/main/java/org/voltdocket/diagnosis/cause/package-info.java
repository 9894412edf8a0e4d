/**
 * From findings to causes: probabilities, the battery's verdict, the leaning, what to do next, what is missing.
 *
 * <p>Imports {@code rulebook}, {@code quantity}, the judge's records and {@code kernel}. Start reading at {@link
 * org.voltdocket.diagnosis.cause.CauseRanking}.
 */
package org.voltdocket.diagnosis.cause;
