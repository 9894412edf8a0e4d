package org.voltdocket.assessment.rerun;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.Sha256;

/**
 * A run over the archive.
 *
 * @param edition name of the edition
 * @param sha256 digest of its text
 * @param casesTotal 0 until it has started
 * @param reason why it failed; empty where it did not
 */
public record ReassessmentRun(
        UUID id,
        RunMode mode,
        String edition,
        Sha256 sha256,
        RunState state,
        Instant requestedAt,
        String requestedBy,
        Optional<Instant> startedAt,
        Optional<Instant> endedAt,
        int casesTotal,
        Optional<String> reason) {}
