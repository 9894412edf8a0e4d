package org.voltdocket.access;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/** A token as a list shows it; never the token itself. */
public record TokenSummary(UUID id, String name, Instant createdAt, Instant expiresAt, Optional<Instant> revokedAt) {}
