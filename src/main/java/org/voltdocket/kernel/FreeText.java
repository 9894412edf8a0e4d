package org.voltdocket.kernel;

import java.util.Optional;

/** Text that a person writes, such as the reason of a decision: 1 to 2000 characters, like the SQL domain {@code reason_text}. */
public final class FreeText {

    public static final int MAX_LENGTH = 2000;

    private FreeText() {}

    /**
     * The text without blanks around it; empty if it is missing.
     *
     * @param code of the refusal
     * @param field that holds the text
     * @throws RequestException if the text is too long or contains a NUL character, which PostgreSQL does not store
     */
    public static Optional<String> optional(String code, String field, String text) {
        String stripped = text == null ? "" : text.strip();
        if (stripped.length() > MAX_LENGTH) {
            throw RequestException.invalid(
                    code,
                    field,
                    "'" + field + "' has at most " + MAX_LENGTH + " characters; read " + stripped.length());
        }
        if (stripped.indexOf(0) >= 0) {
            throw RequestException.invalid(code, field, "'" + field + "' is text; it contains a NUL character");
        }
        return Optional.of(stripped).filter(given -> !given.isEmpty());
    }

    /**
     * The text without blanks around it.
     *
     * @param purpose what the text states, such as {@code says why}
     * @throws RequestException if the text is missing, too long or contains a NUL character
     */
    public static String required(String code, String field, String text, String purpose) {
        return optional(code, field, text)
                .orElseThrow(() -> RequestException.invalid(
                        code, field, "'" + field + "' " + purpose + ", in 1 to " + MAX_LENGTH + " characters"));
    }
}
