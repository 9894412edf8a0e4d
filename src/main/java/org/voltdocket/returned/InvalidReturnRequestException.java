package org.voltdocket.returned;

import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.kernel.FieldError;
import org.voltdocket.ui.ProblemDetails;

/** A member of a request or form is missing or cannot be right. Answered 400; nothing was changed. */
public final class InvalidReturnRequestException extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;
    private static final int SHOWN = 20;

    private final transient List<FieldError> errors;

    InvalidReturnRequestException(List<FieldError> errors) {
        super(errors.get(0).message());
        this.errors = List.copyOf(errors);
    }

    InvalidReturnRequestException(String field, String message) {
        this(List.of(new FieldError(field, message)));
    }

    /** A request of another room's door for the same things. */
    public static InvalidReturnRequestException of(String field, String message) {
        return new InvalidReturnRequestException(field, message);
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
        ProblemDetail problem = ProblemDetails.of(
                HttpStatus.BAD_REQUEST,
                "return-refused",
                "Something about the returned battery cannot be right",
                getMessage() + ". Nothing was changed: mend it and send it again.");
        return ProblemDetails.withErrors(problem, errors.subList(0, Math.min(SHOWN, errors.size())), errors.size());
    }
}
