package org.voltdocket.claim;

import java.util.List;
import java.util.UUID;

/**
 * One thing that the distributor asked for, and what has come since.
 *
 * @param position in the list that was asked for, from 1
 * @param id kind of evidence or name of a fact; null where the clerk asked in words of his own
 * @param text the clerk's own words; null where {@code id} names it
 * @param answered whether evidence of that kind came after it was asked for, or the fact is known, or the workshop said a
 *     word on it
 * @param evidence what came for it, oldest first; other kinds too, where they were sent to its place
 * @param words what the workshop says of it, oldest first
 */
public record RequestedItem(
        int position, String id, String text, boolean answered, List<UUID> evidence, List<String> words) {

    public RequestedItem {
        evidence = List.copyOf(evidence);
        words = List.copyOf(words);
    }

    /** Its identifier, or the clerk's text. */
    public String name() {
        return id == null ? text : id;
    }
}
