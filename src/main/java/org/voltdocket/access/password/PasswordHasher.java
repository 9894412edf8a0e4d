package org.voltdocket.access.password;

import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.voltdocket.kernel.RequestException;

/** Hashes new passwords. Hashing takes time and memory, so it is done before a transaction and never in one. */
@Service
public class PasswordHasher {

    private final PasswordRules rules;
    private final PasswordEncoder encoder;

    PasswordHasher(PasswordRules rules, PasswordEncoder encoder) {
        this.rules = rules;
        this.encoder = encoder;
    }

    /**
     * Hashes a password.
     *
     * @param account name of the account that gets it
     * @throws RequestException 400 where it is too short, too long or common, with the field {@code password}; 503 where too
     *     many passwords are hashed at this moment
     */
    public HashedPassword hash(String password, String account) {
        return new HashedPassword(encoder.encode(rules.checked(password, account)));
    }
}
