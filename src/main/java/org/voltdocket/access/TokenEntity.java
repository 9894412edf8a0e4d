package org.voltdocket.access;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
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

    @Enumerated(EnumType.STRING)
    private TokenScope scope;

    private Instant createdAt;
    private Instant expiresAt;
    private Instant revokedAt;
    private Instant usedAt;

    @Version
    private Long version;

    protected TokenEntity() {}

    TokenEntity(
            AccountEntity account, String name, TokenScope scope, String digest, Instant createdAt, Instant expiresAt) {
        this.id = UUID.randomUUID();
        this.account = account;
        this.name = name;
        this.scope = scope;
        this.digest = digest;
        this.createdAt = createdAt;
        this.expiresAt = expiresAt;
    }

    TokenScope scope() {
        return scope;
    }

    AccountEntity account() {
        return account;
    }

    boolean usable(Instant now) {
        return revokedAt == null && now.isBefore(expiresAt) && account.enabled();
    }

    /** Whether its last use was noted less than a minute ago. */
    boolean usedJustBefore(Instant now) {
        return usedAt != null && usedAt.plusSeconds(60).isAfter(now);
    }

    UUID id() {
        return id;
    }

    boolean revoke(Instant now) {
        if (revokedAt != null) {
            return false;
        }
        revokedAt = now;
        return true;
    }

    TokenSummary ref() {
        return new TokenSummary(
                id, name, scope, createdAt, expiresAt, Optional.ofNullable(usedAt), Optional.ofNullable(revokedAt));
    }
}
