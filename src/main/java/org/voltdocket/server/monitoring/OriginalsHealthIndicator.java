package org.voltdocket.server.monitoring;

import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;
import org.voltdocket.evidence.original.ObjectStoreConfiguration;
import org.voltdocket.server.limits.DiskReserve;

/**
 * Whether original files can be kept and read. A server whose store is away is still ready, answered by 200, for all nodes
 * share the store and everything else goes on; the word tells whoever watches.
 */
@Component
class OriginalsHealthIndicator implements HealthIndicator {

    private final ObjectStoreConfiguration named;

    OriginalsHealthIndicator(ObjectStoreConfiguration named) {
        this.named = named;
    }

    @Override
    public Health health() {
        boolean answers = named.get().map(store -> store.state().answers()).orElse(true);
        return (answers ? Health.up() : Health.status(DiskReserve.LIMITED)).build();
    }
}
