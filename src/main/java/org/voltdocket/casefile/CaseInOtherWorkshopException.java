package org.voltdocket.casefile;

import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.ui.ProblemDetails;

/** The pair has a case, which another workshop opened. Answered 409, without its number. */
public final class CaseInOtherWorkshopException extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    CaseInOtherWorkshopException() {
        super("This battery in this vehicle has a case with another workshop. Nothing was changed: ask the"
                + " distributor to add your workshop to it.");
    }

    @Override
    public HttpStatusCode getStatusCode() {
        return HttpStatus.CONFLICT;
    }

    @Override
    public ProblemDetail getBody() {
        ProblemDetail problem = ProblemDetails.of(
                HttpStatus.CONFLICT,
                "case-with-another-workshop",
                "The case belongs to another workshop",
                getMessage());
        return problem;
    }
}
