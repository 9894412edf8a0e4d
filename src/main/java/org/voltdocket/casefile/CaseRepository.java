package org.voltdocket.casefile;

import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

/** Rows by id, number and key. */
interface CaseRepository extends Repository<CaseEntity, UUID> {

    Optional<CaseEntity> findById(UUID id);

    /** Writes changed rows now, so that they have their new versions. */
    void flush();

    Optional<CaseEntity> findByNumber(String number);

    /** Locks the row until the transaction ends, so that changes of one case wait for each other. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("select c from CaseEntity c where c.batterySerial = :serial and c.vin = :vin")
    Optional<CaseEntity> lockPair(String serial, String vin);

    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("select c from CaseEntity c where c.number = :number")
    Optional<CaseEntity> lockNumber(String number);

    /** Other cases of the same vehicle or battery, newest first. */
    @Query("select c from CaseEntity c, CaseEntity self where self.id = :id and c.id <> self.id"
            + " and (c.vin = self.vin or c.batterySerial = self.batterySerial)"
            + " order by c.openedAt desc, c.id desc")
    List<CaseEntity> relatives(UUID id);

    List<CaseEntity> findByBatterySerialOrderByOpenedAtDescIdDesc(String batterySerial);

    List<CaseEntity> findByVinOrderByOpenedAtDescIdDesc(String vin);
}
