package org.voltdocket.claim.decision;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;
import org.voltdocket.trail.Trail;

/** The limits above which a second person confirms, one per currency. A currency without one needs no second person. */
@Service
public class ClaimLimits {

    private final JdbcClient db;
    private final Trail trail;
    private final Clock clock;

    ClaimLimits(JdbcClient db, Trail trail, Clock clock) {
        this.db = db;
        this.trail = trail;
        this.clock = clock;
    }

    /** What one person may grant in this currency now; empty where there is no limit. */
    @Transactional(readOnly = true)
    public Optional<Money> inForce(Currency currency) {
        return db.sql("select * from claim_limit where currency = ? order by ordinal desc limit 1")
                .param(currency.getCurrencyCode())
                .query(ClaimLimits::read)
                .optional()
                .flatMap(ClaimLimit::money);
    }

    /** Every limit that was ever set, newest first. For the roles of the distributor. */
    @Transactional(readOnly = true)
    public List<ClaimLimit> all(Actor actor) {
        if (actor.isWorkshop()) {
            throw new AccessDeniedException("only the distributor reads limits");
        }
        return db.sql("select * from claim_limit order by ordinal desc")
                .query(ClaimLimits::read)
                .list();
    }

    /** Those in force, by currency. */
    public List<ClaimLimit> current(Actor actor) {
        Map<Currency, ClaimLimit> newest = new LinkedHashMap<>();
        all(actor).forEach(limit -> newest.putIfAbsent(limit.currency(), limit));
        return newest.values().stream()
                .filter(limit -> limit.amount().isPresent())
                .sorted((a, b) ->
                        a.currency().getCurrencyCode().compareTo(b.currency().getCurrencyCode()))
                .toList();
    }

    /**
     * Sets a limit from now on, or lifts it. For {@link Role#ADMIN}.
     *
     * @param amount text such as {@code 500} or {@code 0}; null or blank lifts the limit
     * @throws RequestException if currency, amount or reason cannot be right
     */
    @Transactional
    public ClaimLimit set(Actor actor, String currency, String amount, String reason) {
        if (!actor.canAdminister()) {
            throw new AccessDeniedException("an administrator sets limits");
        }
        Currency known = Money.currency(currency);
        Optional<Money> limit =
                amount == null || amount.isBlank() ? Optional.empty() : Optional.of(Money.readOrNothing(amount, known));
        String why = FreeText.required("claim-refused", "reason", reason, "states why");
        Optional<Money> before = inForce(known);
        ClaimLimit set = new ClaimLimit(known, limit.map(Money::amount), why, clock.instant(), actor.user());
        db.sql("insert into claim_limit (currency, amount, reason, set_at, set_by) values (?, ?, ?, ?, ?)")
                .param(known.getCurrencyCode())
                .param(limit.map(Money::amount).orElse(null))
                .param(why)
                .param(set.at().atOffset(ZoneOffset.UTC))
                .param(set.by())
                .update();
        Map<String, Object> details = new LinkedHashMap<>();
        Map<String, String> change = new LinkedHashMap<>();
        change.put("old", before.map(Money::text).orElse(null));
        change.put("new", limit.map(Money::text).orElse(null));
        details.put("claim.limit", change);
        details.put("claim.reason", why);
        trail.record(actor, "claim-limit", "limit/" + known.getCurrencyCode(), details);
        return set;
    }

    private static ClaimLimit read(ResultSet row, int number) throws SQLException {
        return new ClaimLimit(
                Currency.getInstance(row.getString("currency")),
                Optional.ofNullable(row.getBigDecimal("amount")),
                row.getString("reason"),
                row.getTimestamp("set_at").toInstant(),
                row.getString("set_by"));
    }
}
