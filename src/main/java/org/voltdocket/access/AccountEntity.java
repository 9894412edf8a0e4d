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
import org.voltdocket.access.password.HashedPassword;
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
    private String issuer;
    private String issuedName;

    @Version
    private Long version;

    protected AccountEntity() {}

    AccountEntity(UUID id, String name, Role role, WorkshopEntity workshop, Instant createdAt) {
        this.id = id;
        this.name = name;
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

    /** Empty until an invitation is accepted, and for an account of an OpenID provider. */
    Optional<String> passwordHash() {
        return Optional.ofNullable(passwordHash);
    }

    /** @param password null takes it away */
    void setPassword(HashedPassword password) {
        this.passwordHash = password == null ? null : password.value();
        this.stamp++;
    }

    void setIdentity(String issuer, String issuedName) {
        this.issuer = issuer;
        this.issuedName = issuedName;
    }

    boolean isOfProvider() {
        return issuer != null;
    }

    /** @return whether that changed anything; the sessions of the account end then */
    boolean assign(Role role, WorkshopEntity workshop) {
        Optional<UUID> before =
                Optional.ofNullable(this.workshop).map(w -> w.ref().id());
        Optional<UUID> after = Optional.ofNullable(workshop).map(w -> w.ref().id());
        if (this.role == role && before.equals(after)) {
            return false;
        }
        this.role = role;
        this.workshop = workshop;
        this.stamp++;
        return true;
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
                id,
                name,
                role,
                Optional.ofNullable(workshop).map(WorkshopEntity::ref),
                enabled,
                createdAt,
                passwordHash != null,
                issuer != null);
    }

    AccountPrincipal signedIn() {
        Optional<UUID> of = Optional.ofNullable(workshop).map(w -> w.ref().id());
        return new AccountPrincipal(id, new Actor(name, role, of), stamp);
    }
}
