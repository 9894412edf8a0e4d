package org.voltdocket.access;

import java.util.Arrays;
import org.voltdocket.kernel.RequestException;

/**
 * A token to be made.
 *
 * @param name purpose of the token, 1 to 80 characters
 * @param days how long it works, 1 to {@value #MOST_DAYS}
 */
public record TokenRequest(String name, TokenScope scope, int days) {

    /** How long a token works where nothing else is asked for: our own choice. */
    public static final int USUAL_DAYS = 90;

    /** Longest time that a token works: our own choice. */
    public static final int MOST_DAYS = 365;

    private static final int MOST_NAME = 80;

    /**
     * Reads a request; what is null has its usual value.
     *
     * @param scope {@code upload}, {@code read} or {@code all}
     * @throws RequestException where a member is missing or out of range; names it
     */
    public static TokenRequest parse(String name, String scope, Integer days) {
        String trimmed = name == null ? "" : name.strip();
        if (trimmed.isEmpty() || trimmed.length() > MOST_NAME) {
            throw invalid("name", "Name the token by what it is for, in 1 to " + MOST_NAME + " characters.");
        }
        int life = days == null ? USUAL_DAYS : days;
        if (life < 1 || life > MOST_DAYS) {
            throw invalid(
                    "expiresInDays", "A token works for 1 to " + MOST_DAYS + " days. Choose a number between them.");
        }
        TokenScope within = scope == null
                ? TokenScope.ALL
                : Arrays.stream(TokenScope.values())
                        .filter(one -> one.id().equals(scope))
                        .findFirst()
                        .orElseThrow(() -> invalid("scope", "The scope of a token is 'upload', 'read' or 'all'."));
        return new TokenRequest(trimmed, within, life);
    }

    private static RequestException invalid(String field, String message) {
        return RequestException.invalid("malformed-request", field, message);
    }
}
