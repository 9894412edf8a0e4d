package org.voltdocket.notice;

import java.util.List;
import java.util.UUID;

/**
 * What a finder found in a case.
 *
 * @param key what of the case it is about
 * @param grounds what goes into the sentence of its kind
 * @param others the other cases it speaks of
 */
record FinderResult(NoticeKind kind, String key, List<String> grounds, List<Other> others) {

    /** Another case. */
    record Other(UUID id, String number, String serial) {}

    /** Others in words; of many the first ones and how many more. */
    static String told(List<Other> others) {
        int shown = Math.min(5, others.size());
        String first = String.join(
                ", ",
                others.subList(0, shown).stream()
                        .map(one -> one.number() + " (" + one.serial() + ")")
                        .toList());
        return others.size() == shown ? first : first + " and " + (others.size() - shown) + " more";
    }
}
