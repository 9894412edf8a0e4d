package org.voltdocket.notice;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.CaseNumber;

/**
 * An unusual pattern that a person should review.
 *
 * @param number case that it is about; empty where it is about a workshop
 * @param workshop name of the workshop that it is about; empty where it is about a case
 * @param grounds the parameters of the message of its kind, in order
 * @param others the other cases involved
 * @param looked the review; empty until a person has reviewed it
 * @param goneAt when its grounds ceased to hold; empty while they hold
 */
public record Notice(
        UUID id,
        Optional<CaseNumber> number,
        Optional<String> workshop,
        NoticeKind kind,
        List<String> grounds,
        List<CaseNumber> others,
        Instant foundAt,
        Optional<Looked> looked,
        Optional<Instant> goneAt) {

    /** The review by a person, with its result. */
    public record Looked(Instant at, String by, String reason) {}

    /** Whether it waits for a review. */
    public boolean open() {
        return looked.isEmpty() && goneAt.isEmpty();
    }
}
