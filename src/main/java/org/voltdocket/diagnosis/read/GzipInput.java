package org.voltdocket.diagnosis.read;

import java.io.IOException;
import java.io.InputStream;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

/**
 * Reads a gzip file of one or more members (RFC 1952). The JDK's class calls itself for each empty member, so the number of
 * empty members in a row is limited.
 */
final class GzipInput extends GZIPInputStream {

    private static final int MOST_EMPTY_MEMBERS = 100;

    private int depth;

    GzipInput(InputStream file) throws IOException {
        super(file, 1 << 16);
    }

    @Override
    public int read(byte[] target, int offset, int length) throws IOException {
        if (++depth > MOST_EMPTY_MEMBERS) {
            throw new ZipException("more than " + MOST_EMPTY_MEMBERS + " empty members in a row");
        }
        try {
            return super.read(target, offset, length);
        } finally {
            depth--;
        }
    }
}
