package org.voltdocket.access.signin;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Base64;
import java.util.Optional;
import javax.crypto.Cipher;
import javax.crypto.Mac;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The server's secret of 256 bits, the same on all servers of one database. Signs by HMAC-SHA-256 (RFC 2104) and encrypts by
 * AES-GCM, each purpose with a key of its own.
 */
@Component
public class ServerSecret {

    private static final int NONCE_BYTES = 12;
    private static final int TAG_BITS = 128;
    private static final SecureRandom RANDOM = new SecureRandom();
    private static final long WITHOUT_END = Long.MAX_VALUE;

    private final JdbcClient db;
    private final SignInSettings settings;
    private final Clock clock;
    private volatile byte[] secret;

    ServerSecret(JdbcClient db, SignInSettings settings, Clock clock) {
        this.db = db;
        this.settings = settings;
        this.clock = clock;
    }

    /** The signature of a text, in base64url. */
    public String sign(String purpose, String text) {
        return encoded(mac(mac(secret(), "sign " + purpose), text));
    }

    /** Whether a signature is that of the text. Takes the same time for every wrong one. */
    public boolean isSigned(String purpose, String text, String signature) {
        byte[] expected = sign(purpose, text).getBytes(StandardCharsets.UTF_8);
        return MessageDigest.isEqual(expected, signature.getBytes(StandardCharsets.UTF_8));
    }

    /** Encrypts a text that may be opened until its lifetime has passed. */
    public String seal(String purpose, String text, Duration lifetime) {
        return seal(purpose, text, clock.instant().plus(lifetime).getEpochSecond());
    }

    /** Encrypts a text for storage. */
    public String seal(String purpose, String text) {
        return seal(purpose, text, WITHOUT_END);
    }

    /** The text of a sealed value; empty where it was changed, is of another purpose or has expired. */
    public Optional<String> open(String purpose, String sealed) {
        try {
            byte[] all = Base64.getUrlDecoder().decode(sealed);
            byte[] nonce = Arrays.copyOf(all, NONCE_BYTES);
            ByteBuffer plain = ByteBuffer.wrap(cipher(Cipher.DECRYPT_MODE, purpose, nonce)
                    .doFinal(all, NONCE_BYTES, Math.max(0, all.length - NONCE_BYTES)));
            long until = plain.getLong();
            boolean inTime = until == WITHOUT_END || clock.instant().isBefore(Instant.ofEpochSecond(until));
            return inTime ? Optional.of(StandardCharsets.UTF_8.decode(plain).toString()) : Optional.empty();
        } catch (GeneralSecurityException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private String seal(String purpose, String text, long until) {
        byte[] nonce = new byte[NONCE_BYTES];
        RANDOM.nextBytes(nonce);
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        byte[] plain = ByteBuffer.allocate(Long.BYTES + utf8.length)
                .putLong(until)
                .put(utf8)
                .array();
        try {
            byte[] closed = cipher(Cipher.ENCRYPT_MODE, purpose, nonce).doFinal(plain);
            return encoded(ByteBuffer.allocate(NONCE_BYTES + closed.length)
                    .put(nonce)
                    .put(closed)
                    .array());
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private Cipher cipher(int mode, String purpose, byte[] nonce) throws GeneralSecurityException {
        Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
        byte[] key = mac(secret(), "seal " + purpose);
        cipher.init(mode, new SecretKeySpec(key, "AES"), new GCMParameterSpec(TAG_BITS, nonce));
        return cipher;
    }

    private static byte[] mac(byte[] key, String text) {
        try {
            Mac mac = Mac.getInstance("HmacSHA256");
            mac.init(new SecretKeySpec(key, "HmacSHA256"));
            return mac.doFinal(text.getBytes(StandardCharsets.UTF_8));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String encoded(byte[] bytes) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    private byte[] secret() {
        byte[] known = secret;
        if (known == null) {
            known = settings.secret() == null || settings.secret().isBlank() ? stored() : configured();
            secret = known;
        }
        return known;
    }

    private byte[] configured() {
        byte[] bytes = Base64.getDecoder().decode(settings.secret().strip());
        if (bytes.length != 32) {
            throw new IllegalArgumentException(
                    "voltdocket.sign-in.secret is Base64 of 32 random bytes: make one with 'openssl rand -base64 32'");
        }
        return bytes;
    }

    /** The stored secret; made by the server that needs it first. */
    private byte[] stored() {
        byte[] fresh = new byte[32];
        RANDOM.nextBytes(fresh);
        db.sql("insert into server_secret (id, secret) values (1, ?) on conflict do nothing")
                .param(fresh)
                .update();
        return db.sql("select secret from server_secret").query(byte[].class).single();
    }
}
