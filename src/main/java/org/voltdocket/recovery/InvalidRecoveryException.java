package org.voltdocket.recovery;

import java.util.List;
import java.util.Map;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.ui.ProblemDetails;

/** A list or an answer that cannot be. Answered 400 with the member, or 409; nothing was changed. */
public final class InvalidRecoveryException extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    private final transient ProblemDetail body;

    private InvalidRecoveryException(ProblemDetail body) {
        super(body.getDetail());
        this.body = body;
    }

    static InvalidRecoveryException member(String field, String message) {
        ProblemDetail problem = ProblemDetails.of(
                HttpStatus.BAD_REQUEST,
                "recovery-refused",
                "Something of the list or its answer cannot be right",
                message + " Nothing was changed.");
        return new InvalidRecoveryException(
                ProblemDetails.withErrors(problem, List.of(Map.of("field", field, "message", message)), 1));
    }

    static InvalidRecoveryException conflict(String message) {
        return new InvalidRecoveryException(ProblemDetails.of(
                HttpStatus.CONFLICT,
                "recovery-conflict",
                "The list is not as it was",
                message + " Nothing was changed: read it again."));
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
