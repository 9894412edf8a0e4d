package org.voltdocket.desk;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface SavedFilterRepository extends JpaRepository<SavedFilterEntity, UUID> {

    @Query("select f from SavedFilterEntity f where f.account = :account order by lower(f.name)")
    List<SavedFilterEntity> ofAccount(String account);

    void deleteByAccountAndName(String account, String name);
}
