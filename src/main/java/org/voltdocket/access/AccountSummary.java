package org.voltdocket.access;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.Role;

/**
 * An account as a list shows it; never its password.
 *
 * @param hasPassword false until its owner accepts the invitation, and for an account of an OpenID provider
 * @param ofProvider whether an OpenID provider signs it in
 */
public record AccountSummary(
        UUID id,
        String name,
        Role role,
        Optional<WorkshopSummary> workshop,
        boolean enabled,
        Instant createdAt,
        boolean hasPassword,
        boolean ofProvider) {}
