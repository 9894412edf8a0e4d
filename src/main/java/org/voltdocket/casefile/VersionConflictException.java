package org.voltdocket.casefile;

import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.ui.ProblemDetails;

/** Somebody changed the case since it was read. Answered 412; nothing was changed. */
public final class VersionConflictException extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    VersionConflictException(CaseReference ref) {
        super("Case " + ref.number() + " was changed since you read it. Nothing was changed now: read it again and"
                + " repeat what still applies.");
    }

    @Override
    public HttpStatusCode getStatusCode() {
        return HttpStatus.PRECONDITION_FAILED;
    }

    @Override
    public ProblemDetail getBody() {
        ProblemDetail problem = ProblemDetails.of(
                HttpStatus.PRECONDITION_FAILED, "changed-meanwhile", "Changed since it was read", getMessage());
        return problem;
    }
}
