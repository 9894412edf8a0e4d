/**
 * What the bench means for decisions: those to be looked at again by a person, and money to be had back.
 *
 * <p>Offers {@link org.voltdocket.dossier.audit.DecisionReviewService} and {@link org.voltdocket.dossier.audit.RecoverablePaymentService}, and their pages
 * {@code /decisions/again} and {@code /recovery}. Both follow from decisions and outcomes at the moment of reading; nothing here
 * changes a decision. Start reading at {@link org.voltdocket.dossier.audit.DecisionReviewService}.
 */
package org.voltdocket.dossier.audit;
