package org.voltdocket.claim;

import java.time.ZoneOffset;
import java.util.Collections;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.Sha256;

/** Decisions with their grounds in PostgreSQL; appended, never changed. */
@Component
class DecisionStore {

    private final JdbcClient db;

    DecisionStore(JdbcClient db) {
        this.db = db;
    }

    /** @param version of the claim after the step that decided it */
    void keep(UUID claimId, long version, ClaimDecision decision) {
        db.sql("""
                insert into claim_decision (claim_id, version, kind, amount, reason, decided_at, decided_by, assessment_id,
                    assessment_sha256, edition, leaning, against_leaning)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .param(claimId)
                .param(version)
                .param(decision.kind().id())
                .param(decision.paid().amount())
                .param(decision.reason())
                .param(decision.at().atOffset(ZoneOffset.UTC))
                .param(decision.by())
                .param(decision.assessment())
                .param(decision.assessmentSha256().hex())
                .param(decision.edition())
                .param(decision.leaning().id())
                .param(decision.againstLeaning())
                .update();
        decision.evidence()
                .forEach((id, sha256) -> db.sql(
                                "insert into claim_decision_evidence (claim_id, evidence_id, sha256) values (?, ?, ?)")
                        .param(claimId)
                        .param(id)
                        .param(sha256.hex())
                        .update());
    }

    Optional<ClaimDecision> of(UUID claimId) {
        return db.sql("select d.*, c.currency from claim_decision d join claim c on c.id = d.claim_id where c.id = ?")
                .param(claimId)
                .query((row, number) -> new ClaimDecision(
                        ClaimState.of(row.getString("kind")),
                        new Money(row.getBigDecimal("amount"), Currency.getInstance(row.getString("currency"))),
                        row.getString("reason"),
                        row.getTimestamp("decided_at").toInstant(),
                        row.getString("decided_by"),
                        row.getObject("assessment_id", UUID.class),
                        new Sha256(row.getString("assessment_sha256")),
                        row.getString("edition"),
                        Leaning.of(row.getString("leaning")),
                        row.getBoolean("against_leaning"),
                        evidence(claimId)))
                .optional();
    }

    private Map<UUID, Sha256> evidence(UUID claimId) {
        Map<UUID, Sha256> digests = new LinkedHashMap<>();
        db.sql("select evidence_id, sha256 from claim_decision_evidence where claim_id = ? order by evidence_id")
                .param(claimId)
                .query(row -> {
                    digests.put(row.getObject("evidence_id", UUID.class), new Sha256(row.getString("sha256")));
                });
        return Collections.unmodifiableMap(digests);
    }
}
