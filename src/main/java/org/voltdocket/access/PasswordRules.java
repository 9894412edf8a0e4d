package org.voltdocket.access;

import java.nio.charset.StandardCharsets;
import org.voltdocket.kernel.RequestException;

/** What a password must be, wherever one is set. */
final class PasswordRules {

    /** NIST SP 800-63B asks for 8 at the least; 12 is our own choice. */
    static final int LEAST = 12;

    /** BCrypt reads no further. */
    static final int MOST_BYTES = 72;

    private PasswordRules() {}

    static String checked(String password, String account) {
        if (password == null || password.codePointCount(0, password.length()) < LEAST) {
            throw RequestException.invalid(
                    "account-refused",
                    "password",
                    "The password is too short. Use " + LEAST + " characters or more; a few words will do.");
        }
        if (password.getBytes(StandardCharsets.UTF_8).length > MOST_BYTES) {
            throw RequestException.invalid(
                    "account-refused", "password", "The password is too long. Use at most " + MOST_BYTES + " bytes.");
        }
        if (password.equalsIgnoreCase(account) || password.chars().distinct().count() < 4) {
            throw RequestException.invalid(
                    "account-refused", "password", "The password is too easy to guess. Use a few words of your own.");
        }
        return password;
    }
}
