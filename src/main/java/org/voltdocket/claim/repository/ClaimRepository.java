package org.voltdocket.claim.repository;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Currency;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.claim.ClaimStepRequest;
import org.voltdocket.claim.Contribution;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Role;
import org.voltdocket.warranty.UseClass;

/** Claims and their steps in PostgreSQL, which lets them change by steps only. */
@Component
public class ClaimRepository {

    private static final String LATEST = "select * from claim where case_id = ? order by ordinal desc limit 1";

    private final JdbcClient db;
    private final boolean separateDuties;

    ClaimRepository(JdbcClient db, @Value("${voltdocket.claims.separate-duties:true}") boolean separateDuties) {
        this.db = db;
        this.separateDuties = separateDuties;
    }

    /**
     * What an account that may decide claims contributed to the case, by the trail; empty if duties are not separated.
     */
    public List<Contribution> contributions(Actor actor, Row row) {
        if (!separateDuties || !actor.canDecideClaims()) {
            return List.of();
        }
        Set<String> acts = new HashSet<>(db.sql("select distinct t.act from trail_event t"
                        + " join case_summary c on c.number = t.subject where c.id = ? and t.actor = ?")
                .param(row.caseId())
                .param(actor.user())
                .query(String.class)
                .list());
        return Arrays.stream(Contribution.values())
                .filter(one -> Arrays.stream(one.acts()).anyMatch(acts::contains))
                .toList();
    }

    /** A claim without its steps. */
    public record Row(
            UUID id,
            UUID caseId,
            UUID workshop,
            Money amount,
            UseClass use,
            ClaimState state,
            long version,
            Instant openedAt,
            String openedBy) {

        static Row of(ResultSet row, int number) throws SQLException {
            return new Row(
                    row.getObject("id", UUID.class),
                    row.getObject("case_id", UUID.class),
                    row.getObject("workshop_id", UUID.class),
                    new Money(row.getBigDecimal("amount"), Currency.getInstance(row.getString("currency"))),
                    UseClass.of(row.getString("use_class")),
                    ClaimState.of(row.getString("state")),
                    row.getLong("version"),
                    row.getTimestamp("opened_at").toInstant(),
                    row.getString("opened_by"));
        }
    }

    /** All claims of a case, oldest first. */
    public List<Row> all(UUID caseId) {
        return db.sql("select * from claim where case_id = ? order by ordinal")
                .param(caseId)
                .query(Row::of)
                .list();
    }

    /** Which claim of its case it is, from 1. */
    int place(Row claim) {
        return db.sql(
                        "select count(*) from claim c join claim k on k.case_id = c.case_id and k.ordinal <= c.ordinal where c.id = ?")
                .param(claim.id())
                .query(Integer.class)
                .single();
    }

    public Optional<Row> latest(UUID caseId) {
        return db.sql(LATEST).param(caseId).query(Row::of).optional();
    }

    /** The same, locked until the transaction ends: the steps of a claim wait for each other. */
    Optional<Row> lockLatest(UUID caseId) {
        return db.sql(LATEST + " for update").param(caseId).query(Row::of).optional();
    }

    /** The claim as it is now. */
    public Row require(UUID claimId) {
        return db.sql("select * from claim where id = ?")
                .param(claimId)
                .query(Row::of)
                .single();
    }

    /** @return false if the case has an open claim */
    public boolean open(UUID caseId, UUID workshop, Money amount, UseClass use, Instant at, String by) {
        return db.sql("""
                        insert into claim (id, case_id, workshop_id, amount, currency, use_class, opened_at, opened_by)
                        values (?, ?, ?, ?, ?, ?, ?, ?)
                        on conflict (case_id) where not claim_has_ended(state) do nothing""")
                        .param(UUID.randomUUID())
                        .param(caseId)
                        .param(workshop)
                        .param(amount.amount())
                        .param(amount.code())
                        .param(use.id())
                        .param(at.atOffset(ZoneOffset.UTC))
                        .param(by)
                        .update()
                == 1;
    }

    /** Moves the claim and keeps the step. */
    public void step(Row claim, Actor actor, ClaimStepRequest request, ClaimState to, Instant at) {
        db.sql("update claim set state = ?, version = version + 1, answered_at = ?, proposed_by = ? where id = ?")
                .param(to.id())
                .param(request.action() == ClaimAction.ANSWER ? at.atOffset(ZoneOffset.UTC) : null)
                .param(request.action().decides() && to == claim.state() ? actor.user() : null)
                .param(claim.id())
                .update();
        db.sql("""
                insert into claim_step (claim_id, version, taken_at, taken_by, role, action, from_state, to_state, reason,
                    items) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .param(claim.id())
                .param(claim.version() + 1)
                .param(at.atOffset(ZoneOffset.UTC))
                .param(actor.user())
                .param(actor.role().name())
                .param(request.action().id())
                .param(claim.state().id())
                .param(to.id())
                .param(request.reason())
                .param(request.requestedItems().toArray(String[]::new))
                .update();
    }

    /** When the workshop submitted the claim; empty for a draft. */
    Optional<Instant> submittedAt(UUID claimId) {
        return db.sql("select taken_at from claim_step where claim_id = ? and action = 'submit'")
                .param(claimId)
                .query((row, number) -> row.getTimestamp("taken_at").toInstant())
                .optional();
    }

    public List<ClaimStep> steps(UUID claimId) {
        return db.sql("select * from claim_step where claim_id = ? order by version")
                .param(claimId)
                .query((row, number) -> new ClaimStep(
                        row.getLong("version"),
                        row.getTimestamp("taken_at").toInstant(),
                        row.getString("taken_by"),
                        Role.valueOf(row.getString("role")),
                        ClaimAction.of(row.getString("action")).orElseThrow(),
                        ClaimState.of(row.getString("from_state")),
                        ClaimState.of(row.getString("to_state")),
                        row.getString("reason"),
                        Arrays.asList((String[]) row.getArray("items").getArray())))
                .list();
    }
}
