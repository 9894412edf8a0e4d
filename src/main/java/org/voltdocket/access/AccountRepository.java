package org.voltdocket.access;

import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Role;

interface AccountRepository extends JpaRepository<AccountEntity, UUID> {

    Optional<AccountEntity> findByName(String name);

    List<AccountEntity> findAllByOrderByName();

    /** Locks the enabled accounts of a role until the transaction ends, always in the same order. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    List<AccountEntity> findByRoleAndEnabledTrueOrderById(Role role);

    List<AccountEntity> findByWorkshopIdAndEnabledTrueAndEmailNotNullOrderByName(UUID workshop);

    List<AccountEntity> findByRoleAndEnabledTrueAndEmailNotNullOrderByName(Role role);

    Optional<AccountEntity> findByIssuerAndIssuedName(String issuer, String issuedName);

    /** Replaces the hash of an unchanged password, unless another password was set meanwhile. */
    @Transactional
    @Modifying
    @Query("update AccountEntity a set a.passwordHash = :wanted, a.version = a.version + 1"
            + " where a.id = :id and a.passwordHash = :old")
    void replaceHash(UUID id, String old, String wanted);

    boolean existsByRole(Role role);
}
