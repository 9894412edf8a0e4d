package org.voltdocket.returned;

import java.util.Optional;
import java.util.UUID;

/**
 * An outcome was given. Told inside the transaction that keeps it.
 *
 * @param caseId empty where the battery has no case
 */
public record OutcomeRecordedEvent(UUID returnId, Optional<UUID> caseId, BenchOutcome finding) {}
