package org.voltdocket.ui.error;

import java.io.IOException;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.springframework.http.HttpStatus;
import org.springframework.http.ProblemDetail;
import org.springframework.transaction.TransactionSystemException;
import org.voltdocket.kernel.RequestException;

/** A temporary state of the server that fails a request: no free connection, no database, or no room on a disk. */
enum Outage {
    /** Every connection of the pool is in use; the database itself answers. */
    BUSY(5) {
        @Override
        ProblemDetail problem() {
            return ProblemDetails.of(RequestException.of(
                    503,
                    "server-busy",
                    "All connections of the server to its database are in use. Confirmed data is safe; this was"
                            + " not done unless the page says so when you look again. Send it again in a few seconds: the same file"
                            + " again is the same item, nothing is kept twice."));
        }
    },
    DATABASE(30) {
        @Override
        ProblemDetail problem() {
            return ProblemDetails.of(
                    HttpStatus.SERVICE_UNAVAILABLE,
                    "database-away",
                    "The database does not answer",
                    "The server cannot reach its database just now. Confirmed data is safe; this was not"
                            + " done unless the page says so when it is back. Send it again in half a minute: the same"
                            + " file again is the same item, nothing is stored twice.");
        }
    },
    DISK(300) {
        @Override
        ProblemDetail problem() {
            return ProblemDetails.of(
                    HttpStatus.INSUFFICIENT_STORAGE,
                    "disk-full",
                    "No storage space left",
                    "A disk of the server is full, and nothing of this request was stored. Confirmed data is safe."
                            + " Inform the administrator (see /watch) and try again later.");
        }
    };

    private static final int DEEPEST = 20;

    /** HikariCP reports in this form that every connection it has is in use. */
    private static final Pattern IN_USE = Pattern.compile("total=([1-9]\\d*), active=\\1,");

    private final int retryAfterS;

    Outage(int retryAfterS) {
        this.retryAfterS = retryAfterS;
    }

    abstract ProblemDetail problem();

    /** When to try again, s. */
    int retryAfterS() {
        return retryAfterS;
    }

    /** What kind of outage is behind an exception; empty where it is something else. */
    static Optional<Outage> behind(Throwable thrown) {
        return behind(thrown, DEEPEST);
    }

    /** What a connection said before it broke may hide behind a rollback that failed for it. */
    private static Optional<Outage> behind(Throwable one, int depth) {
        if (one == null || depth == 0) {
            return Optional.empty();
        }
        Optional<Outage> here = here(one);
        if (here.isEmpty()) {
            here = behind(one.getCause(), depth - 1);
        }
        if (here.isEmpty() && one instanceof TransactionSystemException ended) {
            here = behind(ended.getApplicationException(), depth - 1);
        }
        for (Throwable aside : one.getSuppressed()) {
            here = here.isPresent() ? here : behind(aside, depth - 1);
        }
        return here;
    }

    private static Optional<Outage> here(Throwable one) {
        String message = String.valueOf(one.getMessage()).toLowerCase(Locale.ROOT);
        if (one instanceof IOException && (message.contains("no space left") || message.contains("quota exceeded"))) {
            return Optional.of(DISK);
        }
        if (one instanceof SQLTransientConnectionException) {
            return Optional.of(IN_USE.matcher(message).find() && one.getCause() == null ? BUSY : DATABASE);
        }
        if (one instanceof SQLException sql) {
            return sql.getSQLState() != null
                    ? of(sql.getSQLState())
                    : Optional.of(DATABASE).filter(away -> message.contains("closed"));
        }
        return Optional.empty();
    }

    /** PostgreSQL's error codes: class 08 connection, 57P0x shutting down or starting, 53100 disk full, 53300 too many. */
    private static Optional<Outage> of(String state) {
        if (state.equals("53100")) {
            return Optional.of(DISK);
        }
        boolean away = state.startsWith("08") || state.startsWith("57P0") || state.equals("53300");
        return away ? Optional.of(DATABASE) : Optional.empty();
    }
}
