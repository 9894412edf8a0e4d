/**
 * The letter that tells a workshop a decision, in plain words: what was found, what it means, what to check, what is paid and
 * how to object. It is printed once, when the decision is made, and kept byte for byte.
 *
 * <p>Offers {@link org.voltdocket.dossier.letter.DecisionLetter}; {@code DecisionDocumentListener} hears of decisions and prints letter
 * and report into them. Start reading at {@link org.voltdocket.dossier.letter.DecisionLetter}.
 */
package org.voltdocket.dossier.letter;
