package org.voltdocket.evidence;

import org.voltdocket.casefile.CaseReference;
import org.voltdocket.kernel.Actor;

/** The way in. */
public interface EvidenceIntake {

    /** Largest file taken, bytes: 64 MiB. */
    long MOST_BYTES = 64L << 20;

    /** Most bytes that a compressed recording may unpack to: 1 GiB. */
    long MOST_UNPACKED_BYTES = 1L << 30;

    /** Most rows of a recording. */
    int MOST_ROWS = 5_000_000;

    /**
     * Receives a file: streams and hashes it once, tells its kind by content, reads or refuses it, and keeps it in one
     * transaction together with its trail entry. A refusal leaves a trail entry of its own.
     *
     * @param file the case, as {@code Cases.require} gave it for this actor
     * @return {@link Stored}, {@link AlreadyStored} where the case has the same bytes already, or {@link Rejected}
     * @throws org.voltdocket.casefile.NotFoundException if the actor may not see the case
     * @throws java.io.UncheckedIOException if the sender's stream or the server's disk fails; nothing is kept then
     */
    IntakeResult accept(Actor actor, CaseReference file, Upload upload);
}
