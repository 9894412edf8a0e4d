/**
 * Marks of cases that wait for an assessment, and why the last one failed.
 *
 * <p>A mark is written in the transaction of the change and removed by the assessment: {@link
 * org.voltdocket.casefile.pending.PendingAssessments}.
 */
package org.voltdocket.casefile.pending;
