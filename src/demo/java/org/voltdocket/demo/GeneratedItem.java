package org.voltdocket.demo;

import org.voltdocket.diagnosis.Reading;

/**
 * One item of evidence, as a reading and as a file.
 *
 * @param content the file; reading it gives the same values
 */
public record GeneratedItem(String fileName, Reading reading, byte[] content) {}
