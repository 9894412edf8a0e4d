package org.voltdocket.access.invitation;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

@Entity
@Table(name = "invitation")
class InvitationEntity {

    @Id
    private UUID id;

    private UUID accountId;

    @JdbcTypeCode(SqlTypes.CHAR)
    private String digest;

    private Instant createdAt;
    private Instant expiresAt;
    private Instant endedAt;

    @Version
    private Long version;

    protected InvitationEntity() {}

    InvitationEntity(UUID accountId, String digest, Instant createdAt, Instant expiresAt) {
        this.id = UUID.randomUUID();
        this.accountId = accountId;
        this.digest = digest;
        this.createdAt = createdAt;
        this.expiresAt = expiresAt;
    }

    UUID accountId() {
        return accountId;
    }

    boolean isOpen(Instant now) {
        return endedAt == null && now.isBefore(expiresAt);
    }

    void end(Instant now) {
        this.endedAt = now;
    }
}
