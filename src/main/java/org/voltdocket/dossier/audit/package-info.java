/**
 * Decisions that a bench outcome contradicts ({@code /decisions/again}), for a clerk to review. They are computed on reading; a
 * review changes no decision. Start reading at {@link
 * org.voltdocket.dossier.audit.DecisionReviewService}.
 */
package org.voltdocket.dossier.audit;
