/**
 * Working days, holidays and the due dates of claims that follow from them. Due dates are set when a claim changes and moved when
 * the working days change. Start reading at {@link org.voltdocket.claim.deadline.WorkingDayService}.
 */
package org.voltdocket.claim.deadline;
