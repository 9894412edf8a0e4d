package org.voltdocket.claim.warranty;

import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.casefile.FieldError;
import org.voltdocket.ui.Problems;

/** Terms that cannot be right. Answered 400; nothing was recorded. */
public final class TermsRefused extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    private final String field;

    TermsRefused(String field, String message) {
        super(message);
        this.field = field;
    }

    /** The field of the form that is wrong. */
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
                "terms-refused",
                "Warranty terms that cannot be right",
                getMessage() + " Nothing was recorded: mend it and send it again.");
        return Problems.withErrors(problem, List.of(new FieldError(field, getMessage())), 1);
    }
}
