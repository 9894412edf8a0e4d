package org.voltdocket.dossier.audit;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.trail.Trail;

/** Decisions that a bench outcome contradicts, for a clerk to review. A review never changes the decision. */
@Service
@Transactional
public class DecisionReviewService {

    /** Every decided claim of a case whose returned battery has an outcome, with the latest outcome. */
    private static final String DECIDED = """
            select c.id as claim_id, f.number as case_number, coalesce(w.name, '') as workshop, c.decision as kind,
                   c.paid as amount, c.currency, c.decision_reason, c.decided_at, c.decided_by, r.return_id,
                   r.number as return_number, r.battery_serial, r.supplier, r.type, r.batch, r.outcome_ordinal, r.outcome,
                   r.outcome_reason, r.given_at, r.given_by
            from (select * from claim_summary where decision is not null) c join case_summary f on f.id = c.case_id
            left join workshop_summary w on w.id = c.workshop_id
            join lateral (select * from returned_result x where x.case_id = f.id order by x.ordinal desc limit 1) r on true
            """;

    private static final String AGAINST = """
            (kind = 'approved' and outcome in ('no-fault-found', 'damaged-by-use', 'wear-confirmed')
                or kind = 'declined' and outcome = 'defect-confirmed')""";

    private final JdbcClient db;
    private final Trail trail;
    private final Clock clock;

    DecisionReviewService(JdbcClient db, Trail trail, Clock clock) {
        this.db = db;
        this.trail = trail;
        this.clock = clock;
    }

    /** A clerk's review: whether the decision stands, and why. */
    public record Review(String finding, String reason, Instant at, String by) {}

    /**
     * A decision that a bench outcome contradicts.
     *
     * @param kind {@code approved} or {@code declined}
     * @param outcome of the bench
     * @param review since that outcome; empty where it is pending
     */
    public record ReviewItem(
            UUID claim,
            String caseNumber,
            String workshop,
            String kind,
            BigDecimal amount,
            String currency,
            String decisionReason,
            Instant decidedAt,
            String decidedBy,
            UUID returned,
            String returnNumber,
            long outcomeOrdinal,
            String outcome,
            String outcomeReason,
            Instant givenAt,
            String givenBy,
            Optional<Review> review) {}

    private static void require(Actor actor) {
        if (actor.isWorkshop()) {
            throw new AccessDeniedException("reviews are not open to workshops");
        }
    }

    /** Pending items first, the latest outcome first. */
    @Transactional(readOnly = true)
    public List<ReviewItem> all(Actor actor) {
        require(actor);
        return db.sql("select q.*, s.finding, s.reason as review_reason, s.reviewed_at, s.reviewed_by from (" + DECIDED
                        + """
                        ) q left join lateral (select * from decision_review s where s.claim_id = q.claim_id
                            and s.outcome_ordinal = q.outcome_ordinal order by s.ordinal desc limit 1) s on true
                        where """
                        + " " + AGAINST + " order by (s.finding is not null), q.outcome_ordinal desc")
                .query(DecisionReviewService::item)
                .list();
    }

    /** The number of pending items. */
    @Transactional(readOnly = true)
    public long waiting(Actor actor) {
        return all(actor).stream().filter(one -> one.review().isEmpty()).count();
    }

    /**
     * Stores a review.
     *
     * @param stands whether the decision stands
     * @throws RequestException (404) if no such decision is contradicted
     * @throws RequestException (400) unless the reason has 1 to 2000 characters
     */
    public void review(Actor actor, UUID claim, boolean stands, String reason) {
        if (!actor.canDecideClaims()) {
            throw new AccessDeniedException("only those who decide claims may review decisions");
        }
        String why = FreeText.required("review-refused", "reason", reason, "states the result of the review");
        ReviewItem item = all(actor).stream()
                .filter(one -> one.claim().equals(claim))
                .findFirst()
                .orElseThrow(() -> RequestException.notFound("decision to review"));
        String finding = stands ? "stands" : "was-wrong";
        db.sql("""
                insert into decision_review (claim_id, outcome_ordinal, finding, reason, reviewed_at, reviewed_by)
                values (?, ?, ?, ?, ?, ?)""")
                .param(claim)
                .param(item.outcomeOrdinal())
                .param(finding)
                .param(why)
                .param(clock.instant().atOffset(ZoneOffset.UTC))
                .param(actor.user())
                .update();
        trail.record(
                actor,
                "decision-looked-at-again",
                item.caseNumber(),
                Map.of("again.finding", finding, "again.reason", why, "return.outcome", item.outcome()));
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }

    private static ReviewItem item(ResultSet row, int n) throws SQLException {
        String finding = row.getString("finding");
        return new ReviewItem(
                row.getObject("claim_id", UUID.class),
                row.getString("case_number"),
                row.getString("workshop"),
                row.getString("kind"),
                row.getBigDecimal("amount"),
                row.getString("currency"),
                row.getString("decision_reason"),
                instant(row, "decided_at"),
                row.getString("decided_by"),
                row.getObject("return_id", UUID.class),
                row.getString("return_number"),
                row.getLong("outcome_ordinal"),
                row.getString("outcome"),
                row.getString("outcome_reason"),
                instant(row, "given_at"),
                row.getString("given_by"),
                finding == null
                        ? Optional.empty()
                        : Optional.of(new Review(
                                finding,
                                row.getString("review_reason"),
                                instant(row, "reviewed_at"),
                                row.getString("reviewed_by"))));
    }
}
