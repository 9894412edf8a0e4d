package org.voltdocket.evidence;

import java.io.OutputStream;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.kernel.Actor;

/** Stored evidence. Callers of a method without an {@code Actor} check first that the user may see the case. */
public interface EvidenceArchive {

    /** @throws org.voltdocket.kernel.RequestException (404) if there is none, or not for this actor */
    EvidenceItem item(Actor actor, UUID evidenceId);

    /** The items of a case, in the order received. */
    List<EvidenceItem> ofCase(UUID caseId);

    /** Number of items per case; a case without items is left out. One query. */
    Map<UUID, Integer> counts(Collection<UUID> caseIds);

    /**
     * The readings of a case, ordered by digest; documents have no reading and are left out. A recording takes 8 bytes per
     * row and 4 more per channel.
     */
    List<Evidence> readings(UUID caseId);

    /** Items of a case whose original was erased. */
    Set<UUID> erased(UUID caseId);

    /**
     * Runs work that calls {@link #readings} as soon as there is memory for the readings of the case. Do not call it while
     * holding a transaction or a lock, nor from within itself: a caller that waits for memory must not block the others.
     */
    <T> T withMemoryFor(UUID caseId, Supplier<T> work);

    /** The reading of one item; empty for a document. */
    Optional<Reading> reading(UUID evidenceId);

    /**
     * Writes the original bytes and verifies their digest.
     *
     * @throws IllegalStateException after writing, if the stored bytes do not have the stored digest
     */
    void writeContent(UUID evidenceId, OutputStream to);
}
