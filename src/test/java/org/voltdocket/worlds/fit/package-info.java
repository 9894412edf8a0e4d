/**
 * Fits the weights of evidence of a rule book on generated cases. Start reading at {@code WeightFit}; {@code WeightRotation}
 * leaves one world out in turn, {@code FittedEdition} writes the result into the text of a rule book.
 */
package org.voltdocket.worlds.fit;
