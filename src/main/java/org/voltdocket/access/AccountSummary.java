package org.voltdocket.access;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.Role;

/** An account as a list shows it; never its password. */
public record AccountSummary(
        UUID id, String name, Role role, Optional<WorkshopSummary> workshop, boolean enabled, Instant createdAt) {}
