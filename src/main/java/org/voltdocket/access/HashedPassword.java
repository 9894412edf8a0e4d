package org.voltdocket.access;

/** A password that meets the rules, hashed. Made by {@link PasswordHasher} only. */
public final class HashedPassword {

    private final String value;

    HashedPassword(String value) {
        this.value = value;
    }

    String value() {
        return value;
    }
}
