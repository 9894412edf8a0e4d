package org.voltdocket.claim.repository;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.ClaimStep;

/** Answers to evidence requests in PostgreSQL; appended, never changed. The requests themselves are steps of the claim. */
@Component
public class EvidenceRequestRepository {

    private final JdbcClient db;

    EvidenceRequestRepository(JdbcClient db) {
        this.db = db;
    }

    /** An answer to the latest request of the claim. */
    public void keep(UUID claimId, RequestedItemAnswer answer, Instant at, String by) {
        db.sql("""
                insert into claim_answer (claim_id, version, position, evidence_id, words, answered_at, answered_by)
                select claim_id, max(version), ?, ?, ?, ?, ? from claim_step where claim_id = ? and action = 'ask'
                group by claim_id""")
                .param(answer.position())
                .param(answer.evidence().orElse(null))
                .param(answer.words())
                .param(at.atOffset(ZoneOffset.UTC))
                .param(by)
                .param(claimId)
                .update();
    }

    /** The answers to a request, oldest first. */
    List<RequestedItemAnswer> answers(UUID claimId, ClaimStep request) {
        return db.sql("select position, evidence_id, words from claim_answer where claim_id = ? and version = ?"
                        + " order by ordinal")
                .param(claimId)
                .param(request.version())
                .query((row, number) -> new RequestedItemAnswer(
                        row.getInt("position"),
                        Optional.ofNullable(row.getObject("evidence_id", UUID.class)),
                        row.getString("words")))
                .list();
    }
}
