/**
 * Runs the judge over a case and keeps every result.
 *
 * <p>Listens to a case opened, facts mended and evidence kept, and assesses after their transaction, before the caller
 * goes on; what the caller stored survives a failed assessment. Assessments are appended, never changed.
 * Offers {@link org.voltdocket.assessment.AssessmentService}. May import {@code kernel}, {@code diagnosis}, {@code trail},
 * {@code ui}, {@code casefile}, {@code evidence}. Start reading at {@link org.voltdocket.assessment.AssessmentService}.
 */
package org.voltdocket.assessment;
