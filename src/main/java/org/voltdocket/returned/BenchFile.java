package org.voltdocket.returned;

import java.io.InputStream;

/**
 * A file uploaded by the bench.
 *
 * @param content read once; the caller closes it
 * @param note may be null
 */
public record BenchFile(String fileName, InputStream content, String note) {}
