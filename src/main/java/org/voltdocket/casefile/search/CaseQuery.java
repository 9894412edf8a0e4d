package org.voltdocket.casefile.search;

import java.util.Optional;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;

/**
 * What to list, newest first where nothing else is said.
 *
 * @param q serial (whole or part, 3 characters or more), VIN (whole, its last 6 or 8) or case number as typed; blank for
 *     all
 * @param leaning only cases that lean so
 * @param cause only cases with this first cause
 * @param verdict only cases whose battery is judged so
 * @param state only cases whose claim is in this state; {@code none} for those without a claim
 * @param limit 1 to 200
 * @param cursor where the page before ended; empty for the first page
 * @param oldestFirst turns the order round
 */
public record CaseQuery(
        String q,
        Optional<Leaning> leaning,
        Optional<Cause> cause,
        Optional<BatteryVerdict> verdict,
        Optional<String> state,
        int limit,
        Optional<String> cursor,
        boolean oldestFirst) {

    /** Cases on a page where the caller does not say. */
    public static final int DEFAULT_LIMIT = 50;

    /** Most cases on a page. */
    public static final int MAX_LIMIT = 200;

    public CaseQuery {
        q = q == null ? "" : q.strip();
        if (limit < 1 || limit > MAX_LIMIT) {
            throw new IllegalArgumentException("limit is 1 to " + MAX_LIMIT + "; read " + limit + ".");
        }
    }

    /** Newest first, whatever the verdict of the battery. */
    public CaseQuery(
            String q,
            Optional<Leaning> leaning,
            Optional<Cause> cause,
            Optional<String> state,
            int limit,
            Optional<String> cursor) {
        this(q, leaning, cause, Optional.empty(), state, limit, cursor, false);
    }

    /** The first page of all cases. */
    public static CaseQuery all() {
        return new CaseQuery("", Optional.empty(), Optional.empty(), Optional.empty(), DEFAULT_LIMIT, Optional.empty());
    }
}
