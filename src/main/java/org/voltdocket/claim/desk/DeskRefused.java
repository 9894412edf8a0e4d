package org.voltdocket.claim.desk;

import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.casefile.FieldError;
import org.voltdocket.ui.Problems;

/** A filter or a setting of the desk that cannot be right. Answered 400; nothing was changed. */
public final class DeskRefused extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    private final String field;

    DeskRefused(String field, String message) {
        super(message);
        this.field = field;
    }

    /** The field that is wrong. */
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
                "desk-refused",
                "Something asked of the desk cannot be right",
                getMessage() + " Mend it and send it again.");
        return Problems.withErrors(problem, List.of(new FieldError(field, getMessage())), 1);
    }
}
