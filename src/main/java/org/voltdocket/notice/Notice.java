package org.voltdocket.notice;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.CaseNumber;

/**
 * Something to look at.
 *
 * @param number case that it is about; empty where it is about a workshop
 * @param workshop name of the workshop that it is about; empty where it is about a case
 * @param grounds what goes into the sentence of its kind, in order
 * @param others cases that it speaks of
 * @param looked empty until a person has looked at it
 * @param goneAt when its grounds were gone; empty while they stand
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

    /** A person looked at it, and what came of it. */
    public record Looked(Instant at, String by, String reason) {}

    /** Whether it waits for a person. */
    public boolean open() {
        return looked.isEmpty() && goneAt.isEmpty();
    }
}
