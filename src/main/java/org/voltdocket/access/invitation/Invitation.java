package org.voltdocket.access.invitation;

import java.time.Instant;

/**
 * An invitation just made. This is the only moment its link can be read.
 *
 * @param account name of the account
 * @param path of the link on this server
 */
public record Invitation(String account, String path, Instant expiresAt) {

    @Override
    public String toString() {
        return "Invitation[" + account + "]";
    }
}
