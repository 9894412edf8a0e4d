package org.voltdocket.notice;

import java.util.List;
import java.util.UUID;

/**
 * A pattern that a finder found in a case.
 *
 * @param key the subject within the case, such as an item of evidence
 * @param grounds the parameters of the message of its kind
 * @param others the other cases involved
 */
public record FinderResult(NoticeKind kind, String key, List<String> grounds, List<Other> others) {

    /** Another case. */
    public record Other(UUID id, String number, String serial) {}

    /** Lists the other cases; of more than five, the first five and the number of the others. */
    public static String told(List<Other> others) {
        int shown = Math.min(5, others.size());
        String first = String.join(
                ", ",
                others.subList(0, shown).stream()
                        .map(one -> one.number() + " (" + one.serial() + ")")
                        .toList());
        return others.size() == shown ? first : first + " and " + (others.size() - shown) + " more";
    }
}
