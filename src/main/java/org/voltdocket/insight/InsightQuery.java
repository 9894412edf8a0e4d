package org.voltdocket.insight;

import java.time.LocalDate;
import java.util.List;

/**
 * A part of the archive.
 *
 * @param from first day of claiming that counts (UTC)
 * @param to last day of claiming that counts (UTC), not before {@code from}
 * @param by grouping, one of the topic's groupings; the first where none is given
 */
public record InsightQuery(LocalDate from, LocalDate to, String by) {

    /** The groupings of a topic, the default first; never empty. */
    public static List<String> groupings(Topic topic) {
        return switch (topic) {
            case NO_FAULT -> List.of("outcome", "assessment", "untested");
            case PRODUCTION -> List.of("early", "claimed", "confirmed");
            case CAUSES -> List.of("all", "flooded", "efb", "agm", "gel");
            case TIME_TO_CLAIM -> List.of("type", "batch");
            case REPEATED, MONEY -> List.of("all");
            case LEARNING -> List.of("odds", "stated");
        };
    }

    /**
     * The query of an address.
     *
     * @throws IllegalArgumentException if the last day is before the first, or the topic has no such grouping
     */
    public static InsightQuery of(Topic topic, LocalDate from, LocalDate to, String by) {
        if (to.isBefore(from)) {
            throw new IllegalArgumentException("The last day, " + to + ", lies before the first, " + from + ".");
        }
        List<String> groupings = groupings(topic);
        if (!by.isEmpty() && !groupings.contains(by)) {
            throw new IllegalArgumentException("'" + by + "' is none of " + String.join(", ", groupings) + ".");
        }
        return new InsightQuery(from, to, by.isEmpty() ? groupings.get(0) : by);
    }
}
