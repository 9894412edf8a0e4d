package org.voltdocket.catalogue;

import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.ui.error.ProblemDetails;

/** Invalid catalogue file. Answered 422 with the first errors by line; the catalogue stays as it was. */
public final class InvalidCatalogueFileException extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;
    private static final int SHOWN = 20;

    private final transient List<Error> errors;

    /**
     * One thing wrong.
     *
     * @param line line of the file, from 1
     * @param column where on that line the cell begins, in characters from 1
     * @param message what is wrong and what would be right
     */
    public record Error(long line, int column, String message) {}

    InvalidCatalogueFileException(List<Error> errors) {
        super("Nothing was imported. Correct the listed errors and send the whole file again."
                + " First: line " + errors.get(0).line() + ": "
                + errors.get(0).message());
        this.errors = List.copyOf(errors);
    }

    InvalidCatalogueFileException(long line, String message) {
        this(List.of(new Error(line, 1, message)));
    }

    /** The first 20. */
    public List<Error> errors() {
        return errors.subList(0, Math.min(SHOWN, errors.size()));
    }

    /** How many errors are not among {@link #errors}. */
    public int more() {
        return Math.max(0, errors.size() - SHOWN);
    }

    @Override
    public HttpStatusCode getStatusCode() {
        return HttpStatus.UNPROCESSABLE_CONTENT;
    }

    @Override
    public ProblemDetail getBody() {
        ProblemDetail problem = ProblemDetails.of(
                HttpStatus.UNPROCESSABLE_CONTENT, "catalogue-refused", "Invalid catalogue file", getMessage());
        return ProblemDetails.withErrors(problem, errors(), errors.size());
    }
}
