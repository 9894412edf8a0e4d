package org.voltdocket.ui.error;

import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.web.ErrorResponse;
import org.springframework.web.ErrorResponseException;
import org.voltdocket.kernel.RequestException;

/**
 * Problem details (RFC 9457). The type is a place in the manual that says what happened, why, and what to do next.
 *
 * <p>A controller returns {@link #answer} or throws {@link #raise}; a lower room, which may not import this one, throws
 * Spring's own {@link ErrorResponseException} and gets the type by its status.
 */
public final class ProblemDetails {

    private static final String PAGE = "/manual/problems#";

    /** Errors listed in a problem; further ones are counted. */
    private static final int MAX_ERRORS = 20;

    /** Titles by code. */
    private static final ResourceBundle TITLES = ResourceBundle.getBundle("messages/problem-titles", Locale.ROOT);

    private ProblemDetails() {}

    /**
     * A problem of its own kind.
     *
     * @param slug its place on the manual's page, such as {@code case-with-another-workshop}
     * @param title the kind in a few words, the same every time
     * @param detail this occurrence: what, why, what to do next
     */
    public static ProblemDetail of(HttpStatus status, String slug, String title, String detail) {
        ProblemDetail problem = ProblemDetail.forStatusAndDetail(status, detail);
        problem.setType(URI.create(PAGE + slug));
        problem.setTitle(title);
        return problem;
    }

    /** The problem of a request that was not carried out; its title comes from the code. */
    public static ProblemDetail of(RequestException refused) {
        ProblemDetail problem =
                ProblemDetail.forStatusAndDetail(HttpStatusCode.valueOf(refused.status()), detail(refused));
        problem.setType(URI.create(PAGE + refused.code()));
        problem.setTitle(TITLES.getString("problem." + refused.code() + ".title"));
        if (!refused.errors().isEmpty()) {
            withErrors(
                    problem,
                    refused.errors().stream().limit(MAX_ERRORS).toList(),
                    refused.errors().size());
        }
        refused.properties().forEach(problem::setProperty);
        return problem;
    }

    /** The problem of either kind of refusal. */
    public static ProblemDetail of(RuntimeException refused) {
        return refused instanceof RequestException request ? of(request) : ((ErrorResponse) refused).getBody();
    }

    private static String detail(RequestException refused) {
        if (refused.errors().isEmpty()) {
            return refused.getMessage();
        }
        String message = refused.getMessage();
        return (message.endsWith(".") ? message : message + ".")
                + " Nothing was changed. Correct it and send it again.";
    }

    /** A problem of the kind its status says. */
    public static ProblemDetail of(HttpStatus status, String detail) {
        return completed(ProblemDetail.forStatusAndDetail(status, detail));
    }

    /**
     * A problem with a list of what is wrong where, cut off after the first so many.
     *
     * @param errors the first errors, each as JSON shall show it
     * @param total how many there are altogether; {@code moreErrors} tells how many are not listed
     */
    public static ProblemDetail withErrors(ProblemDetail problem, List<?> errors, long total) {
        problem.setProperty("errors", errors);
        problem.setProperty("moreErrors", Math.max(0, total - errors.size()));
        return problem;
    }

    /** The answer that carries the problem. */
    public static ResponseEntity<ProblemDetail> answer(ProblemDetail problem) {
        return ResponseEntity.status(problem.getStatus())
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(problem);
    }

    /** The exception that ends in this answer; to be thrown. */
    public static ErrorResponseException raise(ProblemDetail problem) {
        return new ErrorResponseException(HttpStatusCode.valueOf(problem.getStatus()), problem, null);
    }

    /** Gives a problem of no kind the kind that its status says. */
    static ProblemDetail completed(ProblemDetail problem) {
        Kind kind = Kind.of(problem.getStatus());
        if (problem.getType() == null || problem.getType().toString().equals("about:blank")) {
            problem.setType(URI.create(PAGE + kind.slug));
            problem.setTitle(kind.title);
        }
        if (problem.getDetail() == null || problem.getDetail().isBlank()) {
            problem.setDetail(kind.next);
        }
        return problem;
    }

    private enum Kind {
        MALFORMED(
                400,
                "malformed-request",
                "The request cannot be read",
                "Check it against the manual and send it again."),
        NOT_SIGNED_IN(401, "not-signed-in", "Not signed in", "Send a token as 'Authorization: Bearer …'."),
        NOT_ALLOWED(403, "not-allowed", "Not allowed for this account", "Ask somebody whose role allows it."),
        NOT_FOUND(404, "not-found", "Not found", "Check the address and the number in it."),
        METHOD(
                405,
                "method-not-allowed",
                "This address does not take that method",
                "The Allow header lists the allowed methods."),
        ACCEPT(406, "not-acceptable", "Requested format not available", "Ask for application/json."),
        CONFLICT(409, "conflict", "It does not fit what is known", "Read what is there now, then decide."),
        TOO_LARGE(413, "too-large", "The upload is too large", "Compress or cut it."),
        MEDIA(
                415,
                "unsupported-media-type",
                "The request comes in a form not read here",
                "See 'Accept' for the forms."),
        CONTENT(422, "refused", "The content was refused", "Correct the named value and send it again."),
        TRIES(429, "too-many-tries", "Too many tries", "Wait as long as 'Retry-After' says."),
        UNAVAILABLE(503, "not-ready", "Not ready", "Try again in a minute."),
        SERVER(500, "server-error", "The server could not finish", "Stored data is safe. Try again later.");

        private final int status;
        private final String slug;
        private final String title;
        private final String next;

        Kind(int status, String slug, String title, String next) {
            this.status = status;
            this.slug = slug;
            this.title = title;
            this.next = next;
        }

        static Kind of(int status) {
            for (Kind kind : values()) {
                if (kind.status == status) {
                    return kind;
                }
            }
            return status < 500 ? MALFORMED : SERVER;
        }
    }
}
