package org.voltdocket.claim.repository;

import java.time.ZoneOffset;
import java.util.Currency;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.DecisionProposal;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Sha256;

/** Proposed decisions in PostgreSQL; appended, never changed. A proposal is pending while the claim has its version. */
@Component
public class DecisionProposalRepository {

    private final JdbcClient db;

    DecisionProposalRepository(JdbcClient db) {
        this.db = db;
    }

    public void keep(UUID claimId, long version, DecisionProposal proposal) {
        db.sql("""
                insert into claim_proposal (claim_id, version, kind, amount, limit_amount, reason, proposed_at, proposed_by,
                    assessment_id, assessment_sha256, edition, leaning, against_leaning)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .param(claimId)
                .param(version)
                .param(proposal.kind().id())
                .param(proposal.paid().amount())
                .param(proposal.limit().amount())
                .param(proposal.reason())
                .param(proposal.at().atOffset(ZoneOffset.UTC))
                .param(proposal.by())
                .param(proposal.assessment())
                .param(proposal.assessmentSha256().hex())
                .param(proposal.edition())
                .param(proposal.leaning().id())
                .param(proposal.againstLeaning())
                .update();
    }

    /** The proposal that waits for a second person. */
    Optional<DecisionProposal> waiting(UUID claimId) {
        return db.sql("select p.*, c.currency from claim_proposal p join claim c on c.id = p.claim_id"
                        + " and c.version = p.version where c.id = ?")
                .param(claimId)
                .query((row, n) -> {
                    Currency currency = Currency.getInstance(row.getString("currency"));
                    return new DecisionProposal(
                            ClaimState.of(row.getString("kind")),
                            new Money(row.getBigDecimal("amount"), currency),
                            new Money(row.getBigDecimal("limit_amount"), currency),
                            row.getString("reason"),
                            row.getTimestamp("proposed_at").toInstant(),
                            row.getString("proposed_by"),
                            row.getObject("assessment_id", UUID.class),
                            new Sha256(row.getString("assessment_sha256")),
                            row.getString("edition"),
                            Leaning.of(row.getString("leaning")),
                            row.getBoolean("against_leaning"));
                })
                .optional();
    }
}
