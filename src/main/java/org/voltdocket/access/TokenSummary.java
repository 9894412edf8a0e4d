package org.voltdocket.access;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * A token as a list shows it; never the token itself.
 *
 * @param usedAt its last use, to the minute
 */
public record TokenSummary(
        UUID id,
        String name,
        TokenScope scope,
        Instant createdAt,
        Instant expiresAt,
        Optional<Instant> usedAt,
        Optional<Instant> revokedAt) {}
