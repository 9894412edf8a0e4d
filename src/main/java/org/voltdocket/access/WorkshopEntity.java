package org.voltdocket.access;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;

@Entity
@Table(name = "workshop")
class WorkshopEntity {

    @Id
    private UUID id;

    private String name;
    private Instant createdAt;

    @Version
    private Long version;

    protected WorkshopEntity() {}

    WorkshopEntity(UUID id, String name, Instant createdAt) {
        this.id = id;
        this.name = name;
        this.createdAt = createdAt;
    }

    WorkshopSummary ref() {
        return new WorkshopSummary(id, name);
    }
}
