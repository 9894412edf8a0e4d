package org.voltdocket.access.password;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.RequestException;

/**
 * What a password must be, after NIST SP 800-63B-4, section 3.1.1.2: at least 15 characters, because it may be the only
 * factor; at least 64 characters possible; no rules on its composition; none that is common, or that comes from the name of
 * the account or of this server.
 */
@Component
class PasswordRules {

    /** Least number of characters (Unicode code points). */
    static final int LEAST = 15;

    /** Largest number of characters; our own choice. */
    static final int MOST = 200;

    private static final String LIST = "/passwords/common-passwords.txt";
    private static final List<String> ORDERS =
            List.of("0123456789", "1234567890", "abcdefghijklmnopqrstuvwxyz", "qwertyuiopasdfghjklzxcvbnm");

    private static final String SERVER = "voltdocket";

    /** A password that contains a name needs as many characters beside it. */
    private static final int BESIDE_NAME = 8;

    private final Set<String> common;
    private final String exempt;

    /** @param exempt the public password of the demo; blank on any other server */
    PasswordRules(@Value("${voltdocket.sign-in.demo-password:}") String exempt) {
        this.common = read();
        this.exempt = exempt;
    }

    /**
     * Returns the password.
     *
     * @param account name of the account
     * @throws RequestException where it is refused, with the field {@code password}
     */
    String checked(String password, String account) {
        int length = password == null ? 0 : password.codePointCount(0, password.length());
        if (length < LEAST) {
            throw refused("The password is too short. Use " + LEAST
                    + " characters or more; four or five words of your own will do.");
        }
        if (length > MOST) {
            throw refused("The password is too long. Use at most " + MOST + " characters.");
        }
        if (!exempt.isBlank() && password.equals(exempt)) {
            return password;
        }
        String lower = password.toLowerCase(Locale.ROOT);
        if (isCommon(lower)) {
            throw refused("The password is one that many people use, or is made from one, so it is tried first."
                    + " Use four or five words of your own.");
        }
        if (isMadeFrom(lower, account) || isMadeFrom(lower, SERVER)) {
            throw refused("The password is made from the name of the account or of this server."
                    + " Use four or five words of your own.");
        }
        return password;
    }

    /** On the list, or an entry that is repeated or has other characters than letters around it; or few characters repeated. */
    private boolean isCommon(String password) {
        return common.contains(password)
                || common.contains(password.replaceAll("^[^\\p{L}]+|[^\\p{L}]+$", ""))
                || common.contains(period(password))
                || password.chars().distinct().count() < 5
                || isSequence(password);
    }

    private static boolean isMadeFrom(String password, String name) {
        return name.length() > 2
                && password.contains(name)
                && password.replace(name, "").length() < BESIDE_NAME;
    }

    /** The shortest text that gives the password when it is repeated. */
    private static String period(String password) {
        int at = (password + password).indexOf(password, 1);
        return password.substring(0, at);
    }

    /** Whether it is a part of digits, letters or keys in their order, repeated, forwards or backwards. */
    private static boolean isSequence(String password) {
        String backwards = new StringBuilder(password).reverse().toString();
        return ORDERS.stream()
                .map(order -> order.repeat(MOST / order.length() + 2))
                .anyMatch(order -> order.contains(password) || order.contains(backwards));
    }

    private static RequestException refused(String message) {
        return RequestException.invalid("account-refused", "password", message);
    }

    private static Set<String> read() {
        try (InputStream in = PasswordRules.class.getResourceAsStream(LIST)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .collect(Collectors.toUnmodifiableSet());
        } catch (IOException e) {
            throw new IllegalStateException("the list of common passwords cannot be read", e);
        }
    }
}
