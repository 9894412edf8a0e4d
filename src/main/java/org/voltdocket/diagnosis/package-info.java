/**
 * The diagnosis library: facts, readings and a rule book in, one {@link org.voltdocket.diagnosis.Assessment} out.
 *
 * <p>Pure functions: no clock, files, database or randomness; the same input gives the same result to the last digit.
 * Imports {@code kernel} only. Subpackages, from the bottom up: {@code signal} (recordings on a common time grid), {@code
 * regime} (starts, engine state, regimes), {@code quantity} (measured quantities with intervals), {@code rulebook} (limits
 * and likelihood ratios), {@code cause} (ranking, verdict, leaning, next steps). Start reading at {@link
 * org.voltdocket.diagnosis.assess.Diagnosis}.
 */
package org.voltdocket.diagnosis;
