package org.voltdocket.evidence.original;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import javax.crypto.AEADBadTagException;
import javax.crypto.Cipher;
import javax.crypto.SecretKey;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Sha256;

/**
 * Keys of original files in the database: each file has its own random key for AES-256-GCM (NIST SP 800-38D), which is stored
 * wrapped (RFC 3394) by the key of the configuration. Without a key in the configuration, files are stored unencrypted.
 */
@Component
public class OriginalKeys {

    private static final int TAG_BITS = 128;
    private static final SecureRandom RANDOM = new SecureRandom();

    private final JdbcClient jdbc;
    private final Optional<SecretKey> master;

    OriginalKeys(JdbcClient jdbc, @Value("${voltdocket.privacy.master-key:}") String master) {
        this.jdbc = jdbc;
        this.master = master(master);
    }

    private static Optional<SecretKey> master(String text) {
        if (text.isBlank()) {
            return Optional.empty();
        }
        byte[] key;
        try {
            key = Base64.getDecoder().decode(text.strip());
        } catch (IllegalArgumentException e) {
            key = new byte[0];
        }
        if (key.length != 32) {
            throw new InvalidStoreSettingsException(
                    "The key for original files has to be 32 bytes in Base64.",
                    "Set VOLTDOCKET_PRIVACY_MASTERKEY to the output of: openssl rand -base64 32");
        }
        return Optional.of(new SecretKeySpec(key, "AES"));
    }

    /** A new key for a file, stored in the caller's transaction; empty if the configuration has no key. */
    Optional<SecretKey> create(Sha256 file) {
        return master.map(with -> {
            byte[] bytes = new byte[32];
            RANDOM.nextBytes(bytes);
            SecretKey key = new SecretKeySpec(bytes, "AES");
            jdbc.sql("insert into original_key (sha256, wrapped) values (?, ?)")
                    .param(file.hex())
                    .param(wrap(with, key))
                    .update();
            return key;
        });
    }

    /**
     * The key of an encrypted file.
     *
     * @throws IllegalStateException if it is not in the database, or was wrapped by another key of the configuration
     */
    SecretKey find(Sha256 file) {
        byte[] wrapped = jdbc.sql("select wrapped from original_key where sha256 = ?")
                .param(file.hex())
                .query((row, n) -> row.getBytes(1))
                .optional()
                .orElseThrow(() -> new IllegalStateException("The key of the original " + file
                        + " is not in the database. Restore the keys that belong to this backup."));
        return unwrap(wrapped);
    }

    private static byte[] wrap(SecretKey with, SecretKey key) {
        try {
            Cipher cipher = Cipher.getInstance("AESWrap");
            cipher.init(Cipher.WRAP_MODE, with);
            return cipher.wrap(key);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private SecretKey unwrap(byte[] wrapped) {
        try {
            Cipher cipher = Cipher.getInstance("AESWrap");
            cipher.init(
                    Cipher.UNWRAP_MODE,
                    master.orElseThrow(() -> new IllegalStateException(
                            "Original files are encrypted, and VOLTDOCKET_PRIVACY_MASTERKEY is not set.")));
            return (SecretKey) cipher.unwrap(wrapped, "AES", Cipher.SECRET_KEY);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(
                    "VOLTDOCKET_PRIVACY_MASTERKEY is another key than the one that this archive was written with.", e);
        }
    }

    /** Encrypts a chunk. The number of the chunk is its nonce, because each file has a key of its own. */
    static byte[] encrypt(SecretKey key, Sha256 file, int seq, byte[] data) {
        try {
            return cipher(Cipher.ENCRYPT_MODE, key, file, seq).doFinal(data);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    /** @return what it was, or where it is damaged bytes that do not give the file's digest */
    static byte[] decrypt(SecretKey key, Sha256 file, int seq, byte[] data) {
        try {
            return cipher(Cipher.DECRYPT_MODE, key, file, seq).doFinal(data);
        } catch (AEADBadTagException e) {
            return data;
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Cipher cipher(int mode, SecretKey key, Sha256 file, int seq) throws GeneralSecurityException {
        Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
        byte[] nonce = ByteBuffer.allocate(12).putInt(8, seq).array();
        cipher.init(mode, key, new GCMParameterSpec(TAG_BITS, nonce));
        cipher.updateAAD(file.hex().getBytes(StandardCharsets.US_ASCII));
        return cipher;
    }
}
