package org.voltdocket.access;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface TokenRepository extends JpaRepository<TokenRow, UUID> {

    Optional<TokenRow> findByDigest(String digest);

    List<TokenRow> findByAccountIdOrderByCreatedAtDesc(UUID account);

    Optional<TokenRow> findByIdAndAccountId(UUID id, UUID account);
}
