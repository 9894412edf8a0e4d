package org.voltdocket.assessment.edition;

import java.util.List;
import org.voltdocket.kernel.RequestException;

/** Refusals of requests about editions. Nothing was changed. */
public final class EditionErrors {

    private static final int SHOWN = 20;

    private EditionErrors() {}

    /** The text is not an edition; each error has its line and column. */
    static RequestException text(List<EditionError> errors) {
        EditionError first = errors.get(0);
        List<EditionError> shown = List.copyOf(errors.subList(0, Math.min(SHOWN, errors.size())));
        return RequestException.of(
                        422,
                        "edition-refused",
                        "Line " + first.line() + ", column " + first.column() + ": " + first.message()
                                + " Nothing was stored.")
                .with("errors", shown)
                .with("moreErrors", errors.size() - shown.size());
    }

    /** A released name has another text already. */
    static RequestException nameTaken(String name) {
        return RequestException.of(
                409,
                "edition-frozen",
                "There is a released edition " + name + " with another text, and decisions may be based on it."
                        + " Nothing was stored. Use the next name.");
    }

    /** There is none of that name. */
    public static RequestException unknown(String name) {
        return RequestException.of(
                422,
                "edition-unknown",
                "This server knows no edition '" + name + "' of the rule book. Nothing was changed. Upload it at"
                        + " /editions, or name an existing one.");
    }

    /** The edition is a draft, and the request needs a released one. */
    public static RequestException draft(String name) {
        return RequestException.of(
                409,
                "edition-in-the-making",
                "Edition " + name + " says inTheMaking: it can be tried, but no stored assessment may be based on it."
                        + " Nothing was changed. Release it first, with a text without that member.");
    }

    /** The reason for putting it in force is missing, too short or too long. */
    static RequestException reason() {
        return RequestException.of(
                422, "edition-reason-missing", "Give a reason of 10 to 2000 characters. Nothing was changed.");
    }

    /** It is in force already. */
    static RequestException inForceAlready(String name) {
        return RequestException.of(
                409, "edition-in-force-already", "Edition " + name + " is the one in force. Nothing was changed.");
    }
}
