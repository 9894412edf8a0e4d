package org.voltdocket.server.startup;

import org.postgresql.util.PSQLException;
import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Says in a sentence that the database does not answer or does not let the server in. */
class DatabaseUnreachableFailureAnalyzer extends AbstractFailureAnalyzer<PSQLException> {

    @Override
    protected FailureAnalysis analyze(Throwable root, PSQLException cause) {
        String state = cause.getSQLState() == null ? "" : cause.getSQLState();
        if (state.startsWith("08")) {
            return new FailureAnalysis(
                    "The database does not answer: " + cause.getMessage(),
                    "Start it, or correct SPRING_DATASOURCE_URL, and start again.",
                    cause);
        }
        if (state.startsWith("28") || state.equals("3D000")) {
            return new FailureAnalysis(
                    "The database does not let the server in: " + cause.getMessage(),
                    "Correct SPRING_DATASOURCE_USERNAME, SPRING_DATASOURCE_PASSWORD or the name at the end of"
                            + " SPRING_DATASOURCE_URL, and start again.",
                    cause);
        }
        return null;
    }
}
