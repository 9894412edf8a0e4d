package org.voltdocket.evidence.original;

import java.util.Optional;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** The store that the settings {@code voltdocket.raw.…} name; none unless they do. */
@Component
public class ObjectStoreConfiguration implements DisposableBean {

    private final ObjectStore store;

    ObjectStoreConfiguration(
            @Value("${voltdocket.raw.endpoint:}") String endpoint,
            @Value("${voltdocket.raw.region:}") String region,
            @Value("${voltdocket.raw.bucket:}") String bucket,
            @Value("${voltdocket.raw.path-style:}") String pathStyle) {
        this.store = StoreSettings.of(endpoint, region, bucket, pathStyle, System.getenv())
                .map(ObjectStore::new)
                .orElse(null);
    }

    public Optional<ObjectStore> get() {
        return Optional.ofNullable(store);
    }

    @Override
    public void destroy() {
        if (store != null) {
            store.close();
        }
    }
}
