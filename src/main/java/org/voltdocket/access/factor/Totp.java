package org.voltdocket.access.factor;

import java.nio.ByteBuffer;
import java.security.GeneralSecurityException;
import java.time.Instant;
import java.util.Locale;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** Time-based one-time passwords: RFC 6238 over RFC 4226, with steps of 30 s. */
final class Totp {

    /** Seconds of a time step, the default of RFC 6238, section 4. */
    static final int STEP_S = 30;

    /** Digits of a code, as authenticator apps expect. */
    static final int DIGITS = 6;

    private static final int[] POWERS = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000};

    private Totp() {}

    /** The time step of a moment. */
    static long step(Instant moment) {
        return Math.floorDiv(moment.getEpochSecond(), STEP_S);
    }

    /** The code that an authenticator app shows: six digits by HMAC-SHA-1. */
    static String code(byte[] secret, long step) {
        return code(secret, step, DIGITS, "HmacSHA1");
    }

    /**
     * The code of a time step.
     *
     * @param digits 6 to 8
     * @param algorithm {@code HmacSHA1}, {@code HmacSHA256} or {@code HmacSHA512}
     */
    static String code(byte[] secret, long step, int digits, String algorithm) {
        byte[] hash;
        try {
            Mac mac = Mac.getInstance(algorithm);
            mac.init(new SecretKeySpec(secret, algorithm));
            hash = mac.doFinal(ByteBuffer.allocate(Long.BYTES).putLong(step).array());
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
        // dynamic truncation: RFC 4226, section 5.3
        int offset = hash[hash.length - 1] & 0xf;
        int number = ByteBuffer.wrap(hash, offset, Integer.BYTES).getInt() & 0x7fffffff;
        return String.format(Locale.ROOT, "%0" + digits + "d", number % POWERS[digits]);
    }
}
