package org.voltdocket.dossier.bag;

import java.io.IOException;
import java.io.OutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.voltdocket.kernel.Sha256;

/** Passes bytes on and digests them on the way. */
final class DigestingOutputStream extends OutputStream {

    private final OutputStream to;
    private final MessageDigest sha256 = Sha256.digest();
    private final MessageDigest sha512 = sha512();
    private long bytes;

    DigestingOutputStream(OutputStream to) {
        this.to = to;
    }

    @Override
    public void write(int one) throws IOException {
        write(new byte[] {(byte) one}, 0, 1);
    }

    @Override
    public void write(byte[] from, int offset, int length) throws IOException {
        to.write(from, offset, length);
        sha256.update(from, offset, length);
        sha512.update(from, offset, length);
        bytes += length;
    }

    FileDigests digested(String path) {
        HexFormat hex = HexFormat.of();
        return new FileDigests(path, bytes, hex.formatHex(sha256.digest()), hex.formatHex(sha512.digest()));
    }

    private static MessageDigest sha512() {
        try {
            return MessageDigest.getInstance("SHA-512");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-512", e);
        }
    }
}
