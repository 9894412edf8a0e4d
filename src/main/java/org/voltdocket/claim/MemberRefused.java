package org.voltdocket.claim;

import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.casefile.FieldError;
import org.voltdocket.ui.Problems;

/** A member of a request or a field of a form is missing or cannot be right. Answered 400; nothing was changed. */
public abstract class MemberRefused extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    private final String field;

    protected MemberRefused(String field, String message) {
        super(message);
        this.field = field;
    }

    /** The member or field that cannot be right. */
    public String field() {
        return field;
    }

    /** The problem's place in the manual. */
    protected abstract String slug();

    protected abstract String title();

    /** What became of the request, and what to do; follows the message. */
    protected abstract String next();

    @Override
    public HttpStatusCode getStatusCode() {
        return HttpStatus.BAD_REQUEST;
    }

    @Override
    public ProblemDetail getBody() {
        ProblemDetail problem = Problems.of(HttpStatus.BAD_REQUEST, slug(), title(), getMessage() + next());
        return Problems.withErrors(problem, List.of(new FieldError(field, getMessage())), 1);
    }
}
