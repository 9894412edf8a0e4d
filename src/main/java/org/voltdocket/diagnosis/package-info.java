/**
 * The judge: facts + readings + rule book in, one {@link org.voltdocket.diagnosis.Assessment} out.
 *
 * <p>Pure arithmetic: no time, files, database or chance; the same input gives the same answer to the last digit.
 * Imports {@code kernel} only. Inside: {@code signal} (recordings made comparable), {@code regime} (what the vehicle was
 * doing when), {@code quantity} (one class per measured quantity), {@code rulebook} (limits, findings), {@code cause}
 * (ranking). Start reading at {@link org.voltdocket.diagnosis.Diagnosis}.
 */
package org.voltdocket.diagnosis;
