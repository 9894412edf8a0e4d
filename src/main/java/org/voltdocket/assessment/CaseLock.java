package org.voltdocket.assessment;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** One assessment of a case at a time, on all nodes together. */
@Component
class CaseLock {

    private final JdbcClient db;

    CaseLock(JdbcClient db) {
        this.db = db;
    }

    /** Waits for the case; it is free again when the transaction ends. */
    void take(UUID caseId) {
        db.sql("select 1 from pg_advisory_xact_lock(hashtextextended(?, 0))")
                .param("assessment " + caseId)
                .query(Integer.class)
                .single();
    }
}
