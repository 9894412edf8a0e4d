package org.voltdocket.access;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface TokenRepository extends JpaRepository<TokenEntity, UUID> {

    Optional<TokenEntity> findByDigest(String digest);

    List<TokenEntity> findByAccountIdOrderByCreatedAtDesc(UUID account);

    Optional<TokenEntity> findByIdAndAccountId(UUID id, UUID account);
}
