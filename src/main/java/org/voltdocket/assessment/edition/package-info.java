/**
 * Editions of the rule book: those shipped with the program, those uploaded, and which one is in force.
 *
 * <p>A text is validated against {@code shared/schemas/rulebook.json} and by the reader of the diagnosis, with line and column; it
 * is stored byte for byte and never changed. A released name has one text. Start reading at {@link
 * org.voltdocket.assessment.edition.EditionService}.
 */
package org.voltdocket.assessment.edition;
