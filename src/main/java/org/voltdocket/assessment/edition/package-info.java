/**
 * Editions of the rule book: those that come with the program and those that were uploaded, and which one is in force.
 *
 * <p>{@link org.voltdocket.assessment.edition.EditionService} is the door. A text is checked against {@code
 * shared/schemas/rulebook.json} and by the judge's own reader, with line and column; it is kept byte for byte and never
 * changed. A released name has one text for good. Start reading at {@link
 * org.voltdocket.assessment.edition.EditionService}.
 */
package org.voltdocket.assessment.edition;
