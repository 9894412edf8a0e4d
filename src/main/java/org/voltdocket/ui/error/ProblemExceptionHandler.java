package org.voltdocket.ui.error;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;
import java.util.UUID;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.util.unit.DataSize;
import org.springframework.web.ErrorResponse;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.context.request.async.AsyncRequestNotUsableException;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.multipart.MaxUploadSizeExceededException;
import org.springframework.web.multipart.MultipartException;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.resource.NoResourceFoundException;
import org.voltdocket.kernel.RequestException;
import tools.jackson.core.JacksonException;
import tools.jackson.core.TokenStreamLocation;

/** The last word on every exception: a problem detail for scripts, the error page for people. */
@ControllerAdvice
@Order(Ordered.LOWEST_PRECEDENCE)
class ProblemExceptionHandler {

    private static final Logger LOG = LoggerFactory.getLogger(ProblemExceptionHandler.class);

    private final DataSize largestFile;

    ProblemExceptionHandler(@Value("${spring.servlet.multipart.max-file-size}") DataSize largestFile) {
        this.largestFile = largestFile;
    }

    @ExceptionHandler
    ResponseEntity<ProblemDetail> any(Exception exception, HttpServletRequest request, HttpServletResponse response)
            throws IOException, ServletException {
        if (response.isCommitted() || exception instanceof AsyncRequestNotUsableException) {
            return null; // the other side has gone, or half the answer is out: nothing to add
        }
        ProblemDetail problem = ProblemDetails.completed(problem(exception, request));
        int retryAfter = Outage.behind(exception)
                .map(Outage::retryAfterS)
                .or(() -> refused(exception).map(RequestException::retryAfterSeconds))
                .orElse(0);
        if (retryAfter > 0) {
            response.setIntHeader(HttpHeaders.RETRY_AFTER, retryAfter);
        }
        if (ErrorPageController.wantsPage(request)) {
            request.setAttribute(ErrorPageController.DETAIL, problem.getDetail());
            show(exception, problem.getStatus(), request, response);
            return null;
        }
        HttpHeaders headers = exception instanceof ErrorResponse known ? known.getHeaders() : HttpHeaders.EMPTY;
        return ResponseEntity.status(problem.getStatus())
                .headers(headers)
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(problem);
    }

    /** An upload that could not be taken apart must not be taken apart again on the way to the error page. */
    private static void show(Exception exception, int status, HttpServletRequest request, HttpServletResponse response)
            throws IOException, ServletException {
        if (!(exception instanceof MultipartException)) {
            response.sendError(status);
            return;
        }
        request.setAttribute(RequestDispatcher.ERROR_EXCEPTION, exception);
        request.setAttribute(RequestDispatcher.ERROR_STATUS_CODE, status);
        try {
            request.getRequestDispatcher("/error").forward(request, response);
        } finally {
            request.removeAttribute(RequestDispatcher.ERROR_EXCEPTION);
        }
    }

    /** The refusal behind an exception: reading a body may wrap it. */
    static Optional<RequestException> refused(Throwable exception) {
        Throwable one = exception;
        for (int depth = 0; one != null && depth < 20; depth++, one = one.getCause()) {
            if (one instanceof RequestException refused) {
                return Optional.of(refused);
            }
        }
        return Optional.empty();
    }

    private ProblemDetail problem(Exception exception, HttpServletRequest request) {
        Optional<RequestException> refused = refused(exception);
        if (refused.isPresent()) {
            return ProblemDetails.of(refused.get());
        }
        if (exception instanceof AuthenticationException && !(exception instanceof ErrorResponse)) {
            return ProblemDetails.of(HttpStatus.UNAUTHORIZED, notSignedIn(request));
        }
        if (exception instanceof AccessDeniedException) {
            return ProblemDetails.of(
                    HttpStatus.FORBIDDEN, "Your account's role does not allow this. Nothing was changed.");
        }
        if (exception instanceof NoResourceFoundException) {
            return ProblemDetails.of(
                    HttpStatus.NOT_FOUND, "There is nothing at this address. Check it against the manual.");
        }
        if (exception instanceof MaxUploadSizeExceededException) {
            return ProblemDetails.of(HttpStatus.CONTENT_TOO_LARGE, tooLarge());
        }
        if (exception instanceof MultipartException && Outage.behind(exception).isEmpty()) {
            return ProblemDetails.of(
                    HttpStatus.BAD_REQUEST,
                    "The upload is no complete multipart request with a part 'file'. Nothing was stored. Send it again.");
        }
        if (exception instanceof InvalidParameterException malformed) {
            HttpStatus status = HttpStatus.resolve(malformed.getErrorCode());
            return status == HttpStatus.CONTENT_TOO_LARGE
                    ? ProblemDetails.of(status, tooLarge())
                    : ProblemDetails.of(HttpStatus.BAD_REQUEST, "The parameters of the request cannot be decoded.");
        }
        if (exception instanceof HttpMessageNotReadableException unread) {
            return ProblemDetails.of(HttpStatus.BAD_REQUEST, unreadable(unread));
        }
        if (exception instanceof MethodArgumentTypeMismatchException mismatch) {
            return mismatch(mismatch);
        }
        if (exception instanceof ErrorResponse known) {
            return known.getBody();
        }
        Optional<Outage> outage = Outage.behind(exception);
        if (outage.isPresent()) {
            LOG.error("{} at {} {}: {}", outage.get(), request.getMethod(), route(request), exception.toString());
            return outage.get().problem();
        }
        String mark = UUID.randomUUID().toString().substring(0, 8);
        LOG.error("Failed with mark {} at {} {}", mark, request.getMethod(), route(request), exception);
        return ProblemDetails.of(
                HttpStatus.INTERNAL_SERVER_ERROR,
                "An unexpected error occurred; the server log contains more under the reference " + mark
                        + ". Stored data is safe. Try again; if it happens again, give the reference to the administrator.");
    }

    /** The route without what it names: a path may hold a VIN, and a log is no place for it. */
    private static String route(HttpServletRequest request) {
        Object route = request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE);
        return route == null ? "an address without a route" : route.toString();
    }

    /** Which limit an upload broke, and what to do. */
    String tooLarge() {
        return "A file may have " + largestFile.toMegabytes() + " MiB (" + largestFile.toBytes()
                + " bytes). Nothing was stored. Compress a recording with gzip, or cut it to the part that matters.";
    }

    private static ProblemDetail mismatch(MethodArgumentTypeMismatchException mismatch) {
        if (mismatch.getParameter().hasParameterAnnotation(PathVariable.class)) {
            return ProblemDetails.of(
                    HttpStatus.NOT_FOUND, "There is nothing at this address. Check it against the manual.");
        }
        return ProblemDetails.of(
                HttpStatus.BAD_REQUEST,
                "The parameter '" + mismatch.getName() + "' cannot be read. See the manual for its form.");
    }

    private static String notSignedIn(HttpServletRequest request) {
        if (request.getRequestURI().endsWith("/api/v1/tokens")) {
            return "A token is made by HTTP Basic with user and password; these are missing or do not fit.";
        }
        return "The call carries no token, or one that is unknown, expired or revoked. Make one at POST /api/v1/tokens "
                + "and send it as 'Authorization: Bearer …'.";
    }

    private static String unreadable(HttpMessageNotReadableException exception) {
        if (exception.getCause() instanceof JacksonException json && json.getLocation() != null) {
            TokenStreamLocation at = json.getLocation();
            return "The body is no JSON of the form expected here: line " + at.getLineNr() + ", column "
                    + at.getColumnNr() + ". " + json.getOriginalMessage();
        }
        return "The body is missing or cannot be read as JSON.";
    }
}
