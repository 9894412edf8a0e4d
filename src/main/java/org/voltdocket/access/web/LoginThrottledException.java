package org.voltdocket.access.web;

import java.time.Duration;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.security.core.AuthenticationException;
import org.springframework.web.ErrorResponse;

/** Too many wrong passwords: this account and address must wait. */
class LoginThrottledException extends AuthenticationException implements ErrorResponse {

    private final transient ProblemDetail body = ProblemDetail.forStatus(HttpStatus.TOO_MANY_REQUESTS);
    private final long seconds;

    LoginThrottledException(Duration wait) {
        super("Too many wrong passwords for this account from this address.");
        this.seconds = Math.max(1, wait.toSeconds());
        body.setTitle("Too many tries");
        body.setDetail(getMessage() + " Wait " + seconds + " seconds, then try again with the right password.");
    }

    long seconds() {
        return seconds;
    }

    @Override
    public HttpStatusCode getStatusCode() {
        return HttpStatus.TOO_MANY_REQUESTS;
    }

    @Override
    public HttpHeaders getHeaders() {
        HttpHeaders headers = new HttpHeaders();
        headers.set(HttpHeaders.RETRY_AFTER, Long.toString(seconds));
        return headers;
    }

    @Override
    public ProblemDetail getBody() {
        return body;
    }
}
