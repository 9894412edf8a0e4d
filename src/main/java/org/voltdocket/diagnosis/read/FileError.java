package org.voltdocket.diagnosis.read;

/**
 * One error in a file.
 *
 * @param line line of the file, from 1; a line break inside a quoted cell counts too
 * @param column where on that line the cell or member begins, counted in characters from 1 (a tab is one character)
 * @param message what is wrong and what to do
 */
public record FileError(long line, int column, String message) {}
