package org.voltdocket.casefile;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.kernel.FieldError;
import org.voltdocket.kernel.Vin;
import org.voltdocket.ui.ProblemDetails;

/** Facts or keys that cannot be right. Answered 400, each member named. */
public final class InvalidFactsException extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    private final transient List<FieldError> errors;
    private final transient Optional<Vin> suggestion;

    InvalidFactsException(List<FieldError> errors, Optional<Vin> suggestion) {
        super(errors.stream().map(FieldError::message).collect(Collectors.joining(" ")));
        this.errors = List.copyOf(errors);
        this.suggestion = suggestion;
    }

    /** In the order of the request's members. */
    public List<FieldError> errors() {
        return errors;
    }

    /** The VIN that may have been misread; to be confirmed by a person. */
    public Optional<Vin> suggestion() {
        return suggestion;
    }

    @Override
    public HttpStatusCode getStatusCode() {
        return HttpStatus.BAD_REQUEST;
    }

    @Override
    public ProblemDetail getBody() {
        ProblemDetail problem =
                ProblemDetails.of(HttpStatus.BAD_REQUEST, "facts-refused", "Facts that cannot be right", getMessage());
        ProblemDetails.withErrors(problem, errors, errors.size());
        suggestion.ifPresent(vin -> problem.setProperty("suggestion", vin.value()));
        return problem;
    }
}
