package org.voltdocket.assessment.edition;

import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.ui.ProblemDetails;

/** An edition cannot be kept, found, tried or put in force. Nothing was changed. */
public final class InvalidEditionException extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;
    private static final int SHOWN = 20;

    private final transient ProblemDetail body;
    private final transient List<EditionError> errors;

    private InvalidEditionException(ProblemDetail body, List<EditionError> errors) {
        super(body.getDetail());
        this.body = body;
        this.errors = errors;
    }

    /** The text is no edition; each error has its line and column. */
    static InvalidEditionException text(List<EditionError> errors) {
        EditionError first = errors.get(0);
        ProblemDetail problem = ProblemDetails.of(
                HttpStatus.UNPROCESSABLE_CONTENT,
                "edition-refused",
                "The text is no edition of the rule book",
                "Line " + first.line() + ", column " + first.column() + ": " + first.message() + " Nothing was kept.");
        List<EditionError> shown = errors.subList(0, Math.min(SHOWN, errors.size()));
        return new InvalidEditionException(ProblemDetails.withErrors(problem, shown, errors.size()), shown);
    }

    /** A released name has another text already. */
    static InvalidEditionException nameTaken(String name) {
        return new InvalidEditionException(
                ProblemDetails.of(
                        HttpStatus.CONFLICT,
                        "edition-frozen",
                        "A released edition never changes",
                        "There is a released edition " + name + " with another text, and decisions may rest on it."
                                + " Nothing was kept: give yours the next name."),
                List.of());
    }

    /** There is none of that name. */
    public static InvalidEditionException unknown(String name) {
        return new InvalidEditionException(
                ProblemDetails.of(
                        HttpStatus.UNPROCESSABLE_CONTENT,
                        "edition-unknown",
                        "There is no such edition",
                        "This server knows no edition '" + name + "' of the rule book. Nothing was changed: upload it"
                                + " at /editions, or name one that is there."),
                List.of());
    }

    /** It is in the making, and what was asked for needs a released one. */
    public static InvalidEditionException inTheMaking(String name) {
        return new InvalidEditionException(
                ProblemDetails.of(
                        HttpStatus.CONFLICT,
                        "edition-in-the-making",
                        "The edition is in the making",
                        "Edition " + name
                                + " says inTheMaking: it can be tried, but no assessment that is kept may rest"
                                + " on it. Nothing was changed: release it first, by a text without that member."),
                List.of());
    }

    /** The reason for putting it in force is missing, too short or too long. */
    static InvalidEditionException reason() {
        return new InvalidEditionException(
                ProblemDetails.of(
                        HttpStatus.UNPROCESSABLE_CONTENT,
                        "edition-reason-missing",
                        "Putting an edition in force needs a reason",
                        "Write 10 to 2000 characters that say why. Nothing was changed."),
                List.of());
    }

    /** It is in force already. */
    static InvalidEditionException already(String name) {
        return new InvalidEditionException(
                ProblemDetails.of(
                        HttpStatus.CONFLICT,
                        "edition-in-force-already",
                        "The edition is in force already",
                        "Edition " + name + " is the one in force. Nothing was changed."),
                List.of());
    }

    /** Where the text is wrong, the first so many; empty where it is not the text. */
    public List<EditionError> errors() {
        return errors;
    }

    @Override
    public HttpStatusCode getStatusCode() {
        return HttpStatusCode.valueOf(body.getStatus());
    }

    @Override
    public ProblemDetail getBody() {
        return body;
    }
}
