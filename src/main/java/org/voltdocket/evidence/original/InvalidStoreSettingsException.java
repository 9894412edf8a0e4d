package org.voltdocket.evidence.original;

/** The settings of the store cannot be right, or do not fit the archive; a server does not start with them. */
public final class InvalidStoreSettingsException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final String action;

    /** @param action what to do */
    public InvalidStoreSettingsException(String message, String action) {
        super(message);
        this.action = action;
    }

    public String action() {
        return action;
    }
}
