package org.voltdocket.server;

/** The server cannot start as it is set up; says why and what to do. */
class StartupException extends RuntimeException {

    private final String action;

    StartupException(String why, String action) {
        super(why);
        this.action = action;
    }

    StartupException(String why, String action, Throwable cause) {
        super(why, cause);
        this.action = action;
    }

    String action() {
        return action;
    }
}
