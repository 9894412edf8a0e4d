package org.voltdocket.access;

import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

@Entity
@Table(name = "api_token")
class TokenEntity {

    @Id
    private UUID id;

    @ManyToOne(fetch = FetchType.EAGER)
    @JoinColumn(name = "account_id")
    private AccountEntity account;

    private String name;

    @JdbcTypeCode(SqlTypes.CHAR)
    private String digest;

    private Instant createdAt;
    private Instant expiresAt;
    private Instant revokedAt;

    protected TokenEntity() {}

    TokenEntity(UUID id, AccountEntity account, String name, String digest, Instant createdAt, Instant expiresAt) {
        this.id = id;
        this.account = account;
        this.name = name;
        this.digest = digest;
        this.createdAt = createdAt;
        this.expiresAt = expiresAt;
    }

    AccountEntity account() {
        return account;
    }

    boolean usable(Instant now) {
        return revokedAt == null && now.isBefore(expiresAt) && account.enabled();
    }

    boolean revoke(Instant now) {
        if (revokedAt != null) {
            return false;
        }
        revokedAt = now;
        return true;
    }

    TokenSummary ref() {
        return new TokenSummary(id, name, createdAt, expiresAt, Optional.ofNullable(revokedAt));
    }
}
