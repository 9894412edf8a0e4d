/**
 * Assesses cases by the rule book and stores every result.
 *
 * <p>{@link org.voltdocket.assessment.EvidenceUploadService} and {@link org.voltdocket.assessment.CaseEditService} are the use
 * cases that change a case and then assess it; controllers call them. {@link org.voltdocket.assessment.AssessmentService} reads the
 * results. Assessments are appended, never changed, and a failed assessment loses nothing: the case stays in
 * {@code casefile.PendingAssessments} and is retried. {@code edition} has the editions of the rule book, {@code rerun} the runs of an
 * edition over all cases, {@code web} the pages. Start reading at {@link org.voltdocket.assessment.CaseAssessor}.
 */
package org.voltdocket.assessment;
