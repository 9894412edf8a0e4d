package org.voltdocket.access.password;

/** A password that meets the rules, hashed. Made by {@link PasswordHasher} only. */
public final class HashedPassword {

    private final String value;

    HashedPassword(String value) {
        this.value = value;
    }

    /** The hash with its parameters, as stored. */
    public String value() {
        return value;
    }
}
