package org.voltdocket.access;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface WorkshopRepository extends JpaRepository<WorkshopEntity, UUID> {

    boolean existsByNameIgnoreCase(String name);

    List<WorkshopEntity> findAllByOrderByName();
}
