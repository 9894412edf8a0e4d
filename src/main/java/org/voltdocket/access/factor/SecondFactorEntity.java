package org.voltdocket.access.factor;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;

@Entity
@Table(name = "second_factor")
class SecondFactorEntity {

    @Id
    private UUID accountId;

    private String secret;
    private Instant createdAt;
    private long lastStep;

    @Version
    private Long version;

    protected SecondFactorEntity() {}

    SecondFactorEntity(UUID accountId, String secret, Instant createdAt, long lastStep) {
        this.accountId = accountId;
        this.secret = secret;
        this.createdAt = createdAt;
        this.lastStep = lastStep;
    }

    UUID accountId() {
        return accountId;
    }

    /** The key for codes, sealed. */
    String secret() {
        return secret;
    }

    Instant createdAt() {
        return createdAt;
    }

    long lastStep() {
        return lastStep;
    }

    void accept(long step) {
        this.lastStep = step;
    }
}
