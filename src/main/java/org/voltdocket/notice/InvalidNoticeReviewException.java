package org.voltdocket.notice;

import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.ui.ProblemDetails;

/** Looking at a notice was not kept: without a reason, or because somebody did before. Answered 400 or 409. */
public final class InvalidNoticeReviewException extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    private final transient ProblemDetail body;

    private InvalidNoticeReviewException(ProblemDetail body) {
        super(body.getDetail());
        this.body = body;
    }

    static InvalidNoticeReviewException reason() {
        return new InvalidNoticeReviewException(ProblemDetails.of(
                HttpStatus.BAD_REQUEST,
                "'reason' says in 1 to 2000 characters what came of looking at it. Nothing was kept."));
    }

    static InvalidNoticeReviewException answer() {
        return new InvalidNoticeReviewException(ProblemDetails.of(
                HttpStatus.CONFLICT,
                "An objection is not looked at but answered, on the page of the case, where the workshop reads it. Nothing was"
                        + " kept."));
    }

    static InvalidNoticeReviewException before(Notice.Looked looked) {
        return new InvalidNoticeReviewException(ProblemDetails.of(
                HttpStatus.CONFLICT,
                looked.by() + " looked at it before: " + looked.reason() + " Nothing was kept; that stands."));
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
