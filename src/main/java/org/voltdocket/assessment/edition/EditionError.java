package org.voltdocket.assessment.edition;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;

/**
 * An error in the text of an edition.
 *
 * @param line from 1
 * @param column from 1
 */
@JsonPropertyOrder({"line", "column", "message"})
public record EditionError(int line, int column, String message) {}
