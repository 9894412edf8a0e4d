package org.voltdocket.casefile;

import java.time.Clock;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Vin;

/** The personal data in {@code case_file}, for its erasure. */
@Component
public class CasePersonalData {

    private final JdbcClient db;
    private final Clock clock;

    CasePersonalData(JdbcClient db, Clock clock) {
        this.db = db;
        this.clock = clock;
    }

    /** Locks the case until the caller's transaction ends. */
    public void lock(UUID caseId) {
        db.sql("select 1 from case_file where id = ? for update").param(caseId).query(rs -> {});
    }

    /** Replaces the VIN by a pseudonym and removes the complaint. The case accepts no change afterwards. */
    public void erase(UUID caseId, Vin pseudonym) {
        db.sql("update case_file set vin = ?, complaint = null, erased_at = ?, version = version + 1 where id = ?")
                .param(pseudonym.value())
                .param(java.sql.Timestamp.from(clock.instant()))
                .param(caseId)
                .update();
    }
}
