package org.voltdocket.casefile;

import java.util.UUID;

/** Facts of a case were filled in, changed or removed. Told inside the transaction that does it. */
public record FactsChangedEvent(UUID caseId) {}
