package org.voltdocket.access;

import java.util.Optional;
import java.util.UUID;
import org.voltdocket.access.password.PasswordHasher;
import org.voltdocket.kernel.Role;

/**
 * An account to be made.
 *
 * @param name 2 to 40 of {@code a-z 0-9 . _ -}; upper case is lowered
 * @param password see {@link PasswordHasher}; null where its owner sets one by an invitation, or a provider signs it in
 * @param workshop present exactly for {@link Role#WORKSHOP}
 * @param email where its mail goes
 */
public record NewAccount(String name, String password, Role role, Optional<UUID> workshop, Optional<String> email) {

    /** An account without an e-mail address. */
    public NewAccount(String name, String password, Role role, Optional<UUID> workshop) {
        this(name, password, role, workshop, Optional.empty());
    }

    @Override
    public String toString() {
        return "NewAccount[" + name + ", " + role + "]";
    }
}
