package org.voltdocket.evidence.original;

import java.io.IOException;
import java.io.OutputStream;
import java.security.MessageDigest;
import org.voltdocket.kernel.Sha256;

/** Passes pieces on, each when the next has come and the last only if digest and length hold: nobody takes damage for whole. */
final class DigestVerifyingOutputStream {

    private final OutputStream to;
    private final MessageDigest digest = Sha256.digest();
    private byte[] held = new byte[0];
    private long bytes;

    DigestVerifyingOutputStream(OutputStream to) {
        this.to = to;
    }

    void take(byte[] piece) throws IOException {
        to.write(held);
        digest.update(piece);
        bytes += piece.length;
        held = piece;
    }

    /**
     * Passes the last piece on, if digest and length are correct.
     *
     * @param noted the length that was noted when it was kept
     * @param mend what to do where they do not hold
     */
    void end(Sha256 sha256, long noted, String mend) throws IOException {
        if (!Sha256.wrap(digest.digest()).equals(sha256)) {
            throw new IllegalStateException("The bytes kept under " + sha256 + " no longer give this digest: " + mend);
        }
        if (bytes != noted) {
            throw new IllegalStateException(
                    "Of " + sha256 + " " + noted + " bytes are noted, and " + bytes + " are kept: " + mend);
        }
        to.write(held);
    }
}
