package org.voltdocket.returned;

import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.casefile.FieldError;
import org.voltdocket.ui.Problems;

/** A member of a request or form is missing or cannot be right. Answered 400; nothing was changed. */
public final class ReturnRefused extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;
    private static final int SHOWN = 20;

    private final transient List<FieldError> errors;

    ReturnRefused(List<FieldError> errors) {
        super(errors.get(0).message());
        this.errors = List.copyOf(errors);
    }

    ReturnRefused(String field, String message) {
        this(List.of(new FieldError(field, message)));
    }

    /** A request of another room's door for the same things. */
    public static ReturnRefused of(String field, String message) {
        return new ReturnRefused(field, message);
    }

    /** What is wrong where. */
    public List<FieldError> errors() {
        return errors;
    }

    @Override
    public HttpStatusCode getStatusCode() {
        return HttpStatus.BAD_REQUEST;
    }

    @Override
    public ProblemDetail getBody() {
        ProblemDetail problem = Problems.of(
                HttpStatus.BAD_REQUEST,
                "return-refused",
                "Something about the returned battery cannot be right",
                getMessage() + ". Nothing was changed: mend it and send it again.");
        return Problems.withErrors(problem, errors.subList(0, Math.min(SHOWN, errors.size())), errors.size());
    }
}
