package org.voltdocket.evidence.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import org.voltdocket.diagnosis.read.FileLimits;
import org.voltdocket.kernel.Sha256;

/**
 * An upload in a temporary file.
 *
 * @param sha256 null if the upload was too large and not read to its end
 * @param bytes number of bytes read
 */
record SpooledUpload(Sha256 sha256, long bytes) {

    boolean tooLarge() {
        return sha256 == null;
    }

    /** Streams once to the file, hashing and counting; stops at the first byte above the limit. */
    static SpooledUpload take(InputStream in, Path file) throws IOException {
        MessageDigest digest = Sha256.digest();
        byte[] block = new byte[1 << 16];
        long bytes = 0;
        try (OutputStream out = Files.newOutputStream(file)) {
            for (int n = in.read(block); n >= 0; n = in.read(block)) {
                bytes += n;
                if (bytes > FileLimits.FILE_BYTES) {
                    return new SpooledUpload(null, bytes);
                }
                digest.update(block, 0, n);
                out.write(block, 0, n);
            }
        }
        return new SpooledUpload(Sha256.wrap(digest.digest()), bytes);
    }
}
