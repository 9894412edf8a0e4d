/**
 * Compares decisions with bench outcomes: decisions to review ({@code /decisions/again}) and recoverable payments ({@code
 * /recovery}). Both are computed on reading; nothing here changes a decision. Start reading at {@link
 * org.voltdocket.dossier.audit.DecisionReviewService}.
 */
package org.voltdocket.dossier.audit;
