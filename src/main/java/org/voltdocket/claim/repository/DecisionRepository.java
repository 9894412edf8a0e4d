package org.voltdocket.claim.repository;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.ZoneOffset;
import java.util.Collections;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.Confirmation;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Sha256;

/** Decisions with what they are based on in PostgreSQL; appended, never changed. */
@Component
public class DecisionRepository {

    private final JdbcClient db;

    DecisionRepository(JdbcClient db) {
        this.db = db;
    }

    /** @param version of the claim after the step that decided it */
    public void keep(UUID claimId, long version, ClaimDecision decision) {
        db.sql("""
                insert into claim_decision (claim_id, version, kind, amount, reason, decided_at, decided_by, assessment_id,
                    assessment_sha256, edition, leaning, against_leaning, limit_amount, proposed_at, confirmed_by)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
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
                .param(decision.limit().map(Money::amount).orElse(null))
                .param(decision.confirmation()
                        .map(second -> second.proposedAt().atOffset(ZoneOffset.UTC))
                        .orElse(null))
                .param(decision.confirmation().map(Confirmation::by).orElse(null))
                .update();
        decision.evidence()
                .forEach((id, sha256) -> db.sql(
                                "insert into claim_decision_evidence (claim_id, evidence_id, sha256) values (?, ?, ?)")
                        .param(claimId)
                        .param(id)
                        .param(sha256.hex())
                        .update());
    }

    public Optional<ClaimDecision> of(UUID claimId) {
        return db.sql("select d.*, c.currency from claim_decision d join claim c on c.id = d.claim_id where c.id = ?")
                .param(claimId)
                .query((row, number) -> read(row, claimId))
                .optional();
    }

    private ClaimDecision read(ResultSet row, UUID claimId) throws SQLException {
        Currency currency = Currency.getInstance(row.getString("currency"));
        BigDecimal limit = row.getBigDecimal("limit_amount");
        String second = row.getString("confirmed_by");
        return new ClaimDecision(
                ClaimState.of(row.getString("kind")),
                new Money(row.getBigDecimal("amount"), currency),
                row.getString("reason"),
                row.getTimestamp("decided_at").toInstant(),
                row.getString("decided_by"),
                row.getObject("assessment_id", UUID.class),
                new Sha256(row.getString("assessment_sha256")),
                row.getString("edition"),
                Leaning.of(row.getString("leaning")),
                row.getBoolean("against_leaning"),
                Optional.ofNullable(limit).map(amount -> new Money(amount, currency)),
                second == null
                        ? Optional.empty()
                        : Optional.of(
                                new Confirmation(row.getTimestamp("proposed_at").toInstant(), second)),
                evidence(claimId));
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
