package org.voltdocket.evidence;

import java.io.OutputStream;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.kernel.Actor;

/** The way out. Methods without an actor are for callers that have asked {@code Cases} first. */
public interface EvidenceArchive {

    /** @throws org.voltdocket.casefile.NotFoundException if there is none, or not for this actor */
    EvidenceItem item(Actor actor, UUID evidenceId);

    /** What a case holds, in the order received. */
    List<EvidenceItem> ofCase(UUID caseId);

    /** How many items each of these cases holds; a case that holds none is left out. One query. */
    Map<UUID, Integer> counts(Collection<UUID> caseIds);

    /**
     * What was read from the items of a case, ordered by digest; documents have no reading and are left out.
     * Recordings come whole: 8 bytes a row and 4 more for each channel.
     */
    List<Evidence> readings(UUID caseId);

    /**
     * Does work that reads all of a case, {@link #readings}, once there is memory for it: as many at a time as fit.
     * Start it before locking the case, for an upload has its memory first and locks the case then; and not inside an
     * upload, which has what it needs.
     */
    <T> T withRoomFor(UUID caseId, Supplier<T> work);

    /** What was read from one item; empty for a document. */
    Optional<Reading> reading(UUID evidenceId);

    /**
     * Writes the original bytes, bit for bit, and checks their digest on the way.
     *
     * @throws IllegalStateException after writing, if the bytes kept do not give the digest they were kept under
     */
    void writeContent(UUID evidenceId, OutputStream to);

    /**
     * A stretch of a recording, thinned so that every minimum and maximum survives.
     *
     * @throws org.voltdocket.casefile.NotFoundException if there is none, or not for this actor
     * @throws InvalidSeriesQueryException if the query cannot be right, or the item is no recording
     */
    Series series(Actor actor, UUID evidenceId, SeriesQuery query);
}
