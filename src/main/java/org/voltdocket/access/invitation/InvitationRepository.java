package org.voltdocket.access.invitation;

import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Lock;

interface InvitationRepository extends JpaRepository<InvitationEntity, UUID> {

    Optional<InvitationEntity> findByDigest(String digest);

    /** Locks the row, so that a link is used once. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    Optional<InvitationEntity> findLockedByDigest(String digest);

    List<InvitationEntity> findByAccountIdAndEndedAtIsNull(UUID account);
}
