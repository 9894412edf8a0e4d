package org.voltdocket.privacy;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Base64;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Vin;

/**
 * What stands in place of an erased VIN: {@code ERASED} and 11 characters. With a key in the configuration they are a keyed digest
 * (HMAC-SHA-256), so that the erased cases of one vehicle still belong together in statistics; nobody can try out VINs without
 * the key. Without a key they are random.
 */
@Component
class Pseudonyms {

    static final String PREFIX = "ERASED";

    private static final String ALPHABET = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ";
    private static final int LENGTH = 17;

    private final String key;

    Pseudonyms(@Value("${voltdocket.privacy.master-key:}") String key) {
        this.key = key.strip();
    }

    Vin of(Vin vin) {
        byte[] digest = key.isEmpty() ? random() : digest(vin);
        StringBuilder text = new StringBuilder(PREFIX);
        for (int i = 0; text.length() < LENGTH; i++) {
            text.append(ALPHABET.charAt(Math.floorMod(digest[2 * i] * 256 + digest[2 * i + 1], ALPHABET.length())));
        }
        return Vin.parse(text.toString());
    }

    private byte[] digest(Vin vin) {
        try {
            Mac mac = Mac.getInstance("HmacSHA256");
            mac.init(new SecretKeySpec(Base64.getDecoder().decode(key), "HmacSHA256"));
            return mac.doFinal(("vin " + vin.value()).getBytes(StandardCharsets.UTF_8));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private static byte[] random() {
        byte[] bytes = new byte[32];
        new SecureRandom().nextBytes(bytes);
        return bytes;
    }
}
