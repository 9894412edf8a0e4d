package org.voltdocket.evidence;

import org.voltdocket.casefile.CaseReference;
import org.voltdocket.kernel.Actor;

/** Stores uploaded files. Callers that upload for a user call the service that also assesses the case afterwards. */
public interface EvidenceIntake {

    /**
     * Spools and hashes a file, detects its kind by content, reads it, and stores it in one transaction that also marks the
     * case as pending assessment and writes the trail. A rejected file is only recorded in the trail.
     *
     * @param file the case, as {@code CaseService.require} returned it for this actor
     * @return {@link Stored}, {@link AlreadyStored} if the case already has the same file, or {@link Rejected}
     * @throws org.voltdocket.kernel.RequestException (404) if the actor may not see the case
     * @throws java.io.UncheckedIOException if the sender's stream or the server's disk fails; nothing is stored then
     */
    IntakeResult store(Actor actor, CaseReference file, Upload upload);
}
