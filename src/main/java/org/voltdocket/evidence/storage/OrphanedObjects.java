package org.voltdocket.evidence.storage;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.evidence.original.ObjectStore;
import org.voltdocket.evidence.original.ObjectStoreConfiguration;
import org.voltdocket.kernel.Sha256;

/** Objects in the store that are no evidence. */
@Component
class OrphanedObjects {

    private final JdbcClient jdbc;
    private final Optional<ObjectStore> store;

    @Autowired
    OrphanedObjects(JdbcClient jdbc, ObjectStoreConfiguration named) {
        this(jdbc, named.get());
    }

    OrphanedObjects(JdbcClient jdbc, Optional<ObjectStore> store) {
        this.jdbc = jdbc;
        this.store = store;
    }

    /** @param most so many are named, the others counted */
    EvidenceCheck.Strays find(int most) {
        List<String> first = new ArrayList<>();
        long[] count = {0};
        store.ifPresent(objects -> objects.eachName(names -> {
            Set<String> evidence = evidence(names);
            for (String name : names) {
                if (!evidence.contains(name)) {
                    count[0]++;
                    if (first.size() < most) {
                        first.add(name);
                    }
                }
            }
        }));
        return new EvidenceCheck.Strays(count[0], List.copyOf(first));
    }

    /** Asked after the names were told, so that what was kept meanwhile is evidence already. */
    private Set<String> evidence(List<String> names) {
        List<String> digests = names.stream()
                .map(ObjectStore::digest)
                .filter(Objects::nonNull)
                .map(Sha256::hex)
                .toList();
        Set<String> kept = new HashSet<>();
        if (!digests.isEmpty()) {
            jdbc.sql("select sha256 from raw_file where place = 'store' and sha256 in (:digests)")
                    .param("digests", digests)
                    .query((row, n) -> kept.add(ObjectStore.name(new Sha256(row.getString(1)))))
                    .list();
        }
        return kept;
    }
}
