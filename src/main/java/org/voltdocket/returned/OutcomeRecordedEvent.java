package org.voltdocket.returned;

import java.util.Optional;
import java.util.UUID;

/**
 * An outcome was recorded. Published inside the transaction that stores it.
 *
 * @param caseId empty where the battery has no case
 */
public record OutcomeRecordedEvent(UUID returnId, Optional<UUID> caseId, BenchOutcome finding) {}
