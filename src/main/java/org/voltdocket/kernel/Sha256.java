package org.voltdocket.kernel;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.regex.Pattern;

/**
 * A SHA-256 digest (FIPS 180-4).
 *
 * @param hex 64 lower-case hexadecimal digits
 */
public record Sha256(String hex) implements Comparable<Sha256> {

    private static final Pattern FORM = Pattern.compile("[0-9a-f]{64}");

    public Sha256 {
        if (hex == null || !FORM.matcher(hex).matches()) {
            throw new IllegalArgumentException("A SHA-256 digest is 64 hexadecimal digits in lower case.");
        }
    }

    /** Digest of bytes in memory. */
    public static Sha256 of(byte[] bytes) {
        return wrap(digest().digest(bytes));
    }

    /** Wraps a finished digest of 32 bytes. */
    public static Sha256 wrap(byte[] digest) {
        return new Sha256(HexFormat.of().formatHex(digest));
    }

    /** A fresh digest to stream bytes through. */
    public static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }

    /** The 32 bytes. */
    public byte[] bytes() {
        return HexFormat.of().parseHex(hex);
    }

    @Override
    public int compareTo(Sha256 other) {
        return hex.compareTo(other.hex);
    }

    @Override
    public String toString() {
        return hex;
    }
}
