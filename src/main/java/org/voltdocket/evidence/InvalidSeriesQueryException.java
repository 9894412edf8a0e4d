package org.voltdocket.evidence;

/** A question for a series that cannot be right. Answered 400. */
public final class InvalidSeriesQueryException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final String parameter;

    public InvalidSeriesQueryException(String parameter, String message) {
        super(message);
        this.parameter = parameter;
    }

    /** The query parameter to blame. */
    public String parameter() {
        return parameter;
    }
}
