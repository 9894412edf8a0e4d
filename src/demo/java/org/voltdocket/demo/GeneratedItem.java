package org.voltdocket.demo;

import org.voltdocket.diagnosis.Reading;

/**
 * One item of evidence, as read and as a file.
 *
 * @param content the file; it reads back to the same values
 */
public record GeneratedItem(String fileName, Reading reading, byte[] content) {}
