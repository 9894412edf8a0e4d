package org.voltdocket.access;

import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.Role;

/**
 * An account to be made.
 *
 * @param name 2 to 40 of {@code a-z 0-9 . _ -}; upper case is lowered
 * @param password 12 characters or more, at most 72 bytes in UTF-8
 * @param workshop present exactly for {@link Role#WORKSHOP}
 */
public record NewAccount(String name, String password, Role role, Optional<UUID> workshop) {

    @Override
    public String toString() {
        return "NewAccount[" + name + ", " + role + "]";
    }
}
