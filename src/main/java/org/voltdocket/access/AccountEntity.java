package org.voltdocket.access;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;

@Entity
@Table(name = "account")
class AccountEntity {

    @Id
    private UUID id;

    private String name;
    private String passwordHash;

    @Enumerated(EnumType.STRING)
    private Role role;

    @ManyToOne(fetch = FetchType.EAGER)
    @JoinColumn(name = "workshop_id")
    private WorkshopEntity workshop;

    private boolean enabled;
    private int stamp;
    private Instant createdAt;
    private String email;

    protected AccountEntity() {}

    AccountEntity(UUID id, String name, String passwordHash, Role role, WorkshopEntity workshop, Instant createdAt) {
        this.id = id;
        this.name = name;
        this.passwordHash = passwordHash;
        this.role = role;
        this.workshop = workshop;
        this.enabled = true;
        this.createdAt = createdAt;
    }

    UUID id() {
        return id;
    }

    String name() {
        return name;
    }

    Role role() {
        return role;
    }

    boolean enabled() {
        return enabled;
    }

    String passwordHash() {
        return passwordHash;
    }

    void setPassword(String hash) {
        this.passwordHash = hash;
        this.stamp++;
    }

    void setEnabled(boolean enabled) {
        this.enabled = enabled;
        this.stamp++;
    }

    Optional<String> email() {
        return Optional.ofNullable(email);
    }

    void setEmail(String email) {
        this.email = email;
    }

    AccountSummary ref() {
        return new AccountSummary(
                id, name, role, Optional.ofNullable(workshop).map(WorkshopEntity::ref), enabled, createdAt);
    }

    AccountPrincipal signedIn() {
        Optional<UUID> of = Optional.ofNullable(workshop).map(w -> w.ref().id());
        return new AccountPrincipal(id, new Actor(name, role, of), stamp);
    }
}
