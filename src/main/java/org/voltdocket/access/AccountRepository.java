package org.voltdocket.access;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.voltdocket.kernel.Role;

interface AccountRepository extends JpaRepository<AccountEntity, UUID> {

    Optional<AccountEntity> findByName(String name);

    List<AccountEntity> findAllByOrderByName();

    long countByRoleAndEnabledTrue(Role role);

    List<AccountEntity> findByWorkshopIdAndEnabledTrueAndEmailNotNullOrderByName(UUID workshop);

    List<AccountEntity> findByRoleAndEnabledTrueAndEmailNotNullOrderByName(Role role);

    boolean existsByRole(Role role);
}
