package org.voltdocket.casefile;

import java.util.List;
import java.util.stream.Collectors;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.ui.error.ProblemDetails;

/** The case exists and knows other facts than those given. Answered 409; nothing was changed. */
public final class FactsConflictException extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    private final transient CaseReference ref;
    private final transient List<Conflict> conflicts;

    /**
     * One fact told two ways.
     *
     * @param field its name, dotted
     * @param known what the case says
     * @param given what the request says
     */
    public record Conflict(String field, String message, Object known, Object given) {}

    FactsConflictException(CaseReference ref, List<Conflict> conflicts) {
        super("Case " + ref.number() + " already exists with other values of "
                + conflicts.stream().map(Conflict::field).collect(Collectors.joining(", "))
                + ". Nothing was changed: leave these out, or correct the case if it is wrong.");
        this.ref = ref;
        this.conflicts = List.copyOf(conflicts);
    }

    /** The case that exists. */
    public CaseReference ref() {
        return ref;
    }

    /** In the order of the request's members. */
    public List<Conflict> conflicts() {
        return conflicts;
    }

    @Override
    public HttpStatusCode getStatusCode() {
        return HttpStatus.CONFLICT;
    }

    @Override
    public ProblemDetail getBody() {
        ProblemDetail problem =
                ProblemDetails.of(HttpStatus.CONFLICT, "conflicting-facts", "The case has other values", getMessage());
        ProblemDetails.withErrors(problem, conflicts, conflicts.size());
        problem.setProperty("case", ref.number().value());
        return problem;
    }
}
