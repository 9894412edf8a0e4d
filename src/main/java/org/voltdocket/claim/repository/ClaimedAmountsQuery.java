package org.voltdocket.claim.repository;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.assessment.rerun.ClaimedAmounts;

/** Sums the claimed amounts of cases whose assessment a run over the archive would change. */
@Component
class ClaimedAmountsQuery implements ClaimedAmounts {

    private final JdbcClient db;

    ClaimedAmountsQuery(JdbcClient db) {
        this.db = db;
    }

    @Override
    public Map<String, BigDecimal> of(Collection<UUID> caseIds) {
        Map<String, BigDecimal> sums = new TreeMap<>();
        db.sql("""
                select currency, sum(amount) from (
                    select distinct on (case_id) currency, amount, state from claim
                    where case_id = any(?) order by case_id, ordinal desc) as latest
                where state <> 'withdrawn' group by currency""").param(caseIds.toArray(UUID[]::new)).query(row -> {
            sums.put(row.getString(1), row.getBigDecimal(2));
        });
        return sums;
    }
}
