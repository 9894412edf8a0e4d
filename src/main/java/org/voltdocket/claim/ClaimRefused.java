package org.voltdocket.claim;

import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.casefile.FieldError;
import org.voltdocket.ui.Problems;

/** A member of the request is missing or cannot be right. Answered 400; nothing was changed. */
public final class ClaimRefused extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    private final String field;

    ClaimRefused(String field, String message) {
        super(message);
        this.field = field;
    }

    /** The member that cannot be right. */
    public String field() {
        return field;
    }

    @Override
    public HttpStatusCode getStatusCode() {
        return HttpStatus.BAD_REQUEST;
    }

    @Override
    public ProblemDetail getBody() {
        ProblemDetail problem = Problems.of(
                HttpStatus.BAD_REQUEST,
                "claim-refused",
                "Something in the claim cannot be right",
                getMessage() + ". Nothing was changed: mend it and send it again.");
        return Problems.withErrors(problem, List.of(new FieldError(field, getMessage())), 1);
    }
}
