package org.voltdocket.kernel;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A request that the server understands but does not carry out. Nothing was changed.
 *
 * <p>Package {@code ui} turns it into a problem detail (RFC 9457): the code names the section of the manual and the title.
 */
public final class RequestException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** The HTTP status of the answer. */
    private final int status;

    private final String code;
    private final transient List<FieldError> errors;
    private final transient Map<String, Object> properties = new LinkedHashMap<>();
    private int retryAfterSeconds;

    private RequestException(int status, String code, String message, List<FieldError> errors) {
        super(message);
        this.status = status;
        this.code = code;
        this.errors = List.copyOf(errors);
    }

    /** A member or form field that is missing or invalid: status 400. */
    public static RequestException invalid(String code, String field, String message) {
        return new RequestException(400, code, message, List.of(new FieldError(field, message)));
    }

    /** Several invalid members: status 400. */
    public static RequestException invalid(String code, String message, List<FieldError> errors) {
        return new RequestException(400, code, message, errors);
    }

    /** A parameter or body that cannot be read: status 400. */
    public static RequestException malformed(String message) {
        return of(400, "malformed-request", message);
    }

    /**
     * What was asked for does not exist or is not visible to the actor: status 404, with the same message in both cases.
     *
     * @param what for example {@code case V-000-001-6}
     */
    public static RequestException notFound(String what) {
        return of(
                404,
                "not-found",
                "There is no " + what + " that you may see. Check what you typed, or ask the distributor whether your"
                        + " workshop belongs to it.");
    }

    /**
     * Any other refusal.
     *
     * @param status 401, 403, 404, 408, 409, 410, 412, 413, 421, 422, 429, 503 or 507
     * @param code section of the manual's page on problems, such as {@code claim-open-already}
     * @param message what happened, why, and what to do next
     */
    public static RequestException of(int status, String code, String message) {
        return new RequestException(status, code, message, List.of());
    }

    /** Whether what was asked for does not exist or is not visible to the actor. */
    public boolean isNotFound() {
        return status == 404;
    }

    /**
     * Lists errors that have other members than {@link FieldError}, such as line and column.
     *
     * @param listed the first errors
     * @param more how many are not listed
     */
    public RequestException withErrors(List<?> listed, long more) {
        return with("errors", listed).with("moreErrors", more);
    }

    /** Adds a member to the problem detail. */
    public RequestException with(String name, Object value) {
        properties.put(name, value);
        return this;
    }

    /** States after how many seconds the same request may succeed. */
    public RequestException retryAfter(int seconds) {
        this.retryAfterSeconds = seconds;
        return this;
    }

    /** After how many seconds the same request may succeed; 0 where time changes nothing. */
    public int retryAfterSeconds() {
        return retryAfterSeconds;
    }

    public int status() {
        return status;
    }

    public String code() {
        return code;
    }

    /** The invalid members, in the order of the request; empty for a refusal without a field. */
    public List<FieldError> errors() {
        return errors;
    }

    /** The first invalid member. */
    public String field() {
        return errors.isEmpty() ? "" : errors.get(0).field();
    }

    /** Further members of the problem detail. */
    public Map<String, Object> properties() {
        return properties;
    }
}
