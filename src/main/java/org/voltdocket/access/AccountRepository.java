package org.voltdocket.access;

import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Lock;
import org.voltdocket.kernel.Role;

interface AccountRepository extends JpaRepository<AccountEntity, UUID> {

    Optional<AccountEntity> findByName(String name);

    List<AccountEntity> findAllByOrderByName();

    /** Locks the enabled accounts of a role until the transaction ends, always in the same order. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    List<AccountEntity> findByRoleAndEnabledTrueOrderById(Role role);

    List<AccountEntity> findByWorkshopIdAndEnabledTrueAndEmailNotNullOrderByName(UUID workshop);

    List<AccountEntity> findByRoleAndEnabledTrueAndEmailNotNullOrderByName(Role role);

    boolean existsByRole(Role role);
}
