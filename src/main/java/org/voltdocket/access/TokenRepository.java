package org.voltdocket.access;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;
import org.springframework.transaction.annotation.Transactional;

interface TokenRepository extends JpaRepository<TokenEntity, UUID> {

    @Transactional
    @Modifying
    @Query("update TokenEntity t set t.usedAt = :now where t.id = :id")
    void noteUse(UUID id, Instant now);

    Optional<TokenEntity> findByDigest(String digest);

    List<TokenEntity> findByAccountIdOrderByCreatedAtDesc(UUID account);

    Optional<TokenEntity> findByIdAndAccountId(UUID id, UUID account);
}
