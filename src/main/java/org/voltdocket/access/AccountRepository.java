package org.voltdocket.access;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.voltdocket.kernel.Role;

interface AccountRepository extends JpaRepository<AccountRow, UUID> {

    Optional<AccountRow> findByName(String name);

    List<AccountRow> findAllByOrderByName();

    long countByRoleAndEnabledTrue(Role role);

    List<AccountRow> findByWorkshopIdAndEnabledTrueAndEmailNotNullOrderByName(UUID workshop);

    List<AccountRow> findByRoleAndEnabledTrueAndEmailNotNullOrderByName(Role role);

    boolean existsByRole(Role role);
}
