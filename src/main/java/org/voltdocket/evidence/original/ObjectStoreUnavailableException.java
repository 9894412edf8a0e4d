package org.voltdocket.evidence.original;

import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.web.ErrorResponseException;
import org.voltdocket.ui.error.ProblemDetails;

/** The store does not answer, or refuses the server: nobody's mistake who asked, and it passes. Answered by 503. */
public final class ObjectStoreUnavailableException extends ErrorResponseException {

    private static final long serialVersionUID = 1L;

    private static final String RETRY_AFTER_S = "30";

    private final String reason;

    ObjectStoreUnavailableException(String reason, Throwable cause) {
        super(
                HttpStatus.SERVICE_UNAVAILABLE,
                ProblemDetails.of(
                        HttpStatus.SERVICE_UNAVAILABLE,
                        "store-away",
                        "The store of original files does not answer",
                        "The server cannot reach the store that keeps original files just now. What was acknowledged before"
                                + " is safe, and cases can be read, claimed for and decided meanwhile; a file that you"
                                + " sent was not kept. Send it again in half a minute: the same file again is the same"
                                + " item, nothing is stored twice."),
                cause);
        this.reason = reason;
        getHeaders().set(HttpHeaders.RETRY_AFTER, RETRY_AFTER_S);
    }

    /** An original is in a store, and this server was started without one: another server of the archive has begun with it. */
    public static ObjectStoreUnavailableException notNamed() {
        return new ObjectStoreUnavailableException(
                "none is named on this server; set VOLTDOCKET_RAW_BUCKET and start it anew", null);
    }

    /** For administrators: who said what. */
    public String reason() {
        return reason;
    }

    @Override
    public String getMessage() {
        return "The store of original files does not answer: " + reason;
    }
}
