package org.voltdocket.returned;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * A recorded outcome of a returned battery. A later one replaces it; both stay stored.
 *
 * @param assessment the case's assessment at that time; empty where there was none
 */
public record RecordedOutcome(
        BenchOutcome finding, String reason, Optional<UUID> assessment, Instant givenAt, String givenBy) {}
