package org.voltdocket.evidence.original;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.stereotype.Component;

/** At the start: an archive that needs a store gets a server that names one; and whether it answers is in the log. */
@Component
class ObjectStoreStartupCheck implements SmartInitializingSingleton {

    private static final Logger LOG = LoggerFactory.getLogger(ObjectStoreStartupCheck.class);

    private final OriginalFileStore raw;
    private final ObjectStoreConfiguration named;

    ObjectStoreStartupCheck(OriginalFileStore raw, ObjectStoreConfiguration named) {
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
