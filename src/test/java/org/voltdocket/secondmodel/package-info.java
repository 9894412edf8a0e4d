/**
 * A second electrical model of battery and vehicle, and the evaluation of the judge against it.
 *
 * <p>Written apart from the demo's generator, so that the judge is not tuned to its twin: acid in three zones instead of
 * tables, charge transfer by sinh, an alternator that is a current source by engine speed, three styles of control
 * unit, a Markov drive cycle. Everything here is invented; only the formulas and orders of size are of the trade (common
 * practice, from memory, where no source is named). Start reading at {@code SecondModel}; {@code Evaluation} is the
 * command.
 */
package org.voltdocket.secondmodel;
