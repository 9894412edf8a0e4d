package org.voltdocket.dossier.share;

import java.time.Instant;
import java.util.UUID;

/**
 * A link to a case.
 *
 * @param revokedAt null while it is not revoked
 * @param accesses how often it was opened
 * @param lastAccess null before the first
 */
public record CaseLink(
        UUID id,
        UUID caseId,
        Instant createdAt,
        String createdBy,
        Instant expiresAt,
        Instant revokedAt,
        int accesses,
        Instant lastAccess) {

    /** Whether it opens the case at that time. */
    public boolean isOpen(Instant at) {
        return revokedAt == null && at.isBefore(expiresAt);
    }
}
