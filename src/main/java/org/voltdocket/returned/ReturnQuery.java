package org.voltdocket.returned;

/**
 * A query for returned batteries, the latest first.
 *
 * @param q part of serial, number, case number or place; blank for all
 * @param state {@code waiting} (no outcome yet), {@code done}, or blank for all
 * @param warning identifier of {@link ArrivalWarning}, or blank for all
 * @param limit 1 to 500
 */
public record ReturnQuery(String q, String state, String warning, int limit) {

    public ReturnQuery {
        q = q == null ? "" : q.strip();
        state = state == null ? "" : state;
        warning = warning == null ? "" : warning;
        limit = Math.max(1, Math.min(500, limit));
    }
}
