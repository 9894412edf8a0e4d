package org.voltdocket.claim.repository;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Vin;

/** The free text and documents of claims, for their erasure. */
@Component
public class ClaimPersonalData {

    private final JdbcClient db;

    ClaimPersonalData(JdbcClient db) {
        this.db = db;
    }

    /** Replaces each text by its digest, and removes letters and reports; their digests stay. */
    public void erase(UUID caseId, Vin pseudonym) {
        db.sql("select erase_claim_texts(?, ?)")
                .param(caseId)
                .param(pseudonym.value())
                .query(rs -> {});
    }
}
