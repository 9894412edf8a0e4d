package org.voltdocket.casefile;

import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.ui.error.ProblemDetails;

/** What was asked for does not exist, or not for the one who asked. Answered 404, the same in both cases. */
public final class NotFoundException extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    /** @param what for example {@code case V-000-001-6} */
    public NotFoundException(String what) {
        super("There is no " + what + " that you may see. Check what you typed, or ask the distributor whether your"
                + " workshop belongs to it.");
    }

    @Override
    public HttpStatusCode getStatusCode() {
        return HttpStatus.NOT_FOUND;
    }

    @Override
    public ProblemDetail getBody() {
        ProblemDetail problem = ProblemDetails.of(HttpStatus.NOT_FOUND, "not-found", "Not found", getMessage());
        return problem;
    }
}
