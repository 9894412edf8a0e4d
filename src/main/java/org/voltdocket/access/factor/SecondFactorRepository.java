package org.voltdocket.access.factor;

import jakarta.persistence.LockModeType;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Lock;

interface SecondFactorRepository extends JpaRepository<SecondFactorEntity, UUID> {

    /** Locks the row, so that two requests cannot use the same code. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    Optional<SecondFactorEntity> findByAccountId(UUID account);
}
