package org.voltdocket.access.invitation;

import java.time.Instant;

/**
 * Somebody is invited to set a password. Published in the transaction that creates the invitation.
 *
 * @param account name of the account
 * @param path of the link, with its secret
 */
public record InvitationCreatedEvent(String account, String path, Instant expiresAt) {

    @Override
    public String toString() {
        return "InvitationCreatedEvent[" + account + "]";
    }
}
