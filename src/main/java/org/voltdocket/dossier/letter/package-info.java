/**
 * The letter that informs a workshop of a decision: what was found, what it means, what to check, what is paid and
 * how to object. It is printed once, when the decision is made, and stored.
 *
 * <p>Offers {@link org.voltdocket.dossier.letter.DecisionLetter}; {@code DecisionDocumentListener} listens for decisions and prints letter
 * and report into them. Start reading at {@link org.voltdocket.dossier.letter.DecisionLetter}.
 */
package org.voltdocket.dossier.letter;
