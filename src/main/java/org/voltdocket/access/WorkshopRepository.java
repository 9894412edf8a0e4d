package org.voltdocket.access;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface WorkshopRepository extends JpaRepository<WorkshopEntity, UUID> {

    Optional<WorkshopEntity> findByNameIgnoreCase(String name);

    boolean existsByNameIgnoreCase(String name);

    List<WorkshopEntity> findAllByOrderByName();
}
