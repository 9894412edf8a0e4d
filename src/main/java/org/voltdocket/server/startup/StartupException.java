package org.voltdocket.server.startup;

/** The server cannot start with its present settings. The message says why, {@link #action()} what to do. */
public class StartupException extends RuntimeException {

    private final String action;

    public StartupException(String why, String action) {
        super(why);
        this.action = action;
    }

    public StartupException(String why, String action, Throwable cause) {
        super(why, cause);
        this.action = action;
    }

    /** What the administrator can do about it. */
    public String action() {
        return action;
    }
}
