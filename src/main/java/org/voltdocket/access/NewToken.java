package org.voltdocket.access;

import java.time.Instant;

/**
 * A token just made. This is the only moment it can be read.
 *
 * @param token the secret to send as {@code Authorization: Bearer}
 * @param expiresAt when it stops to work
 */
public record NewToken(String token, Instant expiresAt) {

    @Override
    public String toString() {
        return "NewToken[until " + expiresAt + "]";
    }
}
