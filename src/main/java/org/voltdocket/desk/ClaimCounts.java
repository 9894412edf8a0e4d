package org.voltdocket.desk;

import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Actor;

/** Numbers of claims by state and leaning: sums of rows that triggers write and a task merges. */
@Component
class ClaimCounts {

    private static final int MANY = 500;

    private final JdbcClient db;

    ClaimCounts(JdbcClient db) {
        this.db = db;
    }

    /** Numbers other than zero by state and within it by leaning, {@code none} for cases that are not assessed. */
    Map<String, Map<String, Long>> counts(Actor actor) {
        Map<String, Map<String, Long>> counts = new LinkedHashMap<>();
        var query = actor.workshop().isPresent()
                ? db.sql(
                                "select state, leaning, sum(n) as n from claim_count where workshop_id = ? group by state, leaning")
                        .param(actor.workshop().get())
                : db.sql(
                        "select state, leaning, sum(n) as n from claim_count where workshop_id is null group by state, leaning");
        query.query(row -> {
            if (row.getLong("n") != 0) {
                counts.computeIfAbsent(row.getString("state"), state -> new LinkedHashMap<>())
                        .put(row.getString("leaning"), row.getLong("n"));
            }
        });
        return counts;
    }

    /** Merges the rows of equal workshop, state and leaning, if there are many. */
    void mergeIfMany() {
        long rows = db.sql("select count(*) from (select 1 from claim_count where workshop_id is null limit ?) r")
                .param(MANY)
                .query(Long.class)
                .single();
        if (rows == MANY) {
            merge();
        }
    }

    void merge() {
        db.sql("select merge_claim_counts()").query(row -> {});
    }
}
