package org.voltdocket.assessment.rerun;

import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.ui.ProblemDetails;

/** A run cannot be asked for or moved as wanted. Nothing was changed. */
public final class InvalidRunException extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    private final transient ProblemDetail body;

    private InvalidRunException(ProblemDetail body) {
        super(body.getDetail());
        this.body = body;
    }

    /** The body of the request is none. */
    public static InvalidRunException request(String detail) {
        return new InvalidRunException(ProblemDetails.of(
                HttpStatus.UNPROCESSABLE_CONTENT,
                "reassessment-refused",
                "The run cannot be asked for so",
                detail + " Nothing was started."));
    }

    /** There is no such run. */
    static InvalidRunException unknown() {
        return new InvalidRunException(
                ProblemDetails.of(HttpStatus.NOT_FOUND, "There is no such run over the archive. Check the address."));
    }

    /** The state does not allow the step. */
    static InvalidRunException step(ReassessmentRun run, RunAction step) {
        return new InvalidRunException(ProblemDetails.of(
                HttpStatus.CONFLICT,
                "reassessment-step-refused",
                "The run's state does not allow this",
                "'" + step.id() + "' does not follow '" + run.state().id() + "', where the run stands. Nothing was"
                        + " changed: read it again."));
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
