/**
 * Assesses a case: measures every quantity in canonical order, evaluates the rules and derives verdict, causes and next steps.
 * Start reading at {@link org.voltdocket.diagnosis.assess.Diagnosis}.
 */
package org.voltdocket.diagnosis.assess;
