package org.voltdocket.access.password;

import java.text.Normalizer;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.voltdocket.kernel.RequestException;

/**
 * Limits how many passwords are hashed at the same time, because each takes 19 MiB of the heap, and normalizes them (NFKC,
 * Unicode Standard Annex 15), so that every keyboard gives the same characters.
 */
class BoundedPasswordEncoder implements PasswordEncoder {

    private static final int AT_ONCE = 4;
    private static final int WAIT_S = 5;

    private final PasswordEncoder encoder;
    private final Semaphore places = new Semaphore(AT_ONCE, true);

    BoundedPasswordEncoder(PasswordEncoder encoder) {
        this.encoder = encoder;
    }

    @Override
    public String encode(CharSequence password) {
        return within(() -> encoder.encode(normalized(password)));
    }

    @Override
    public boolean matches(CharSequence password, String hash) {
        return within(() -> encoder.matches(normalized(password), hash));
    }

    @Override
    public boolean upgradeEncoding(String hash) {
        return encoder.upgradeEncoding(hash);
    }

    private <T> T within(Supplier<T> work) {
        if (!entered()) {
            throw RequestException.of(
                            503,
                            "server-busy",
                            "The server checks as many passwords as it can. Nothing was changed. Try again in a few seconds.")
                    .retryAfter(WAIT_S);
        }
        try {
            return work.get();
        } finally {
            places.release();
        }
    }

    private boolean entered() {
        try {
            return places.tryAcquire(WAIT_S, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private static String normalized(CharSequence password) {
        return Normalizer.normalize(password, Normalizer.Form.NFKC);
    }
}
