package org.voltdocket.access;

import java.util.UUID;

/** A workshop by its key and the name people know it by. */
public record WorkshopSummary(UUID id, String name) {}
