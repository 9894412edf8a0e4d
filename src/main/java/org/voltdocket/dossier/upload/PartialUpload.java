package org.voltdocket.dossier.upload;

import java.time.Instant;
import java.util.UUID;

/**
 * A file on its way.
 *
 * @param account who sends it; nobody else sees it
 * @param note may be null
 * @param bytes length of the whole file
 * @param received bytes that are stored, from the start without a gap
 * @param sha256 digest that the sender expects, hexadecimal; may be null
 * @param evidenceId the evidence that it became; null before
 */
record PartialUpload(
        UUID id,
        UUID caseId,
        String account,
        String fileName,
        String note,
        long bytes,
        long received,
        String sha256,
        UUID evidenceId,
        Instant expiresAt) {

    boolean complete() {
        return received == bytes;
    }
}
