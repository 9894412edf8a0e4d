package org.voltdocket.evidence;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.stereotype.Component;
import org.voltdocket.evidence.store.NamedStore;

/** At the start: an archive that needs a store gets a server that names one; and whether it answers is in the log. */
@Component
class StoreAtStart implements SmartInitializingSingleton {

    private static final Logger LOG = LoggerFactory.getLogger(StoreAtStart.class);

    private final RawStore raw;
    private final NamedStore named;

    StoreAtStart(RawStore raw, NamedStore named) {
        this.raw = raw;
        this.named = named;
    }

    @Override
    public void afterSingletonsInstantiated() {
        raw.requireStore();
        named.get()
                .filter(store -> store.state().answers())
                .ifPresent(store -> LOG.info("New original files are kept in the store {}.", store.where()));
    }
}
