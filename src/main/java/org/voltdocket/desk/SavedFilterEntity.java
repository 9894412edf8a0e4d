package org.voltdocket.desk;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;

@Entity
@Table(name = "claim_saved_filter")
class SavedFilterEntity {

    @Id
    private UUID id;

    private String account;
    private String name;
    private String query;
    private Instant savedAt;

    @Version
    private Long version;

    protected SavedFilterEntity() {}

    SavedFilterEntity(String account, String name) {
        this.id = UUID.randomUUID();
        this.account = account;
        this.name = name;
    }

    String name() {
        return name;
    }

    String query() {
        return query;
    }

    void update(String newQuery, Instant at) {
        query = newQuery;
        savedAt = at;
    }
}
