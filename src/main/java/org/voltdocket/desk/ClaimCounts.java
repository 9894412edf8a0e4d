package org.voltdocket.desk;

import jakarta.annotation.PreDestroy;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Actor;

/** How many claims there are by state and leaning: sums of small rows that triggers write, folded now and then. */
@Component
class ClaimCounts {

    private static final Logger LOG = LoggerFactory.getLogger(ClaimCounts.class);
    private static final int EVERY_S = 20;

    private final JdbcClient db;
    private final ScheduledExecutorService folder = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "claim-tally");
        thread.setDaemon(true);
        return thread;
    });

    ClaimCounts(JdbcClient db) {
        this.db = db;
    }

    /** Counts by state and within it by leaning, {@code none} where a case is not judged; only what is not zero. */
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

    /** Merges the rows of equal workshop, state and leaning. */
    void fold() {
        db.sql("select merge_claim_counts()").query(row -> {});
    }

    @EventListener(ApplicationReadyEvent.class)
    void start() {
        folder.scheduleWithFixedDelay(this::foldIfWorthIt, EVERY_S, EVERY_S, TimeUnit.SECONDS);
    }

    private void foldIfWorthIt() {
        try {
            long rows = db.sql("select count(*) from (select 1 from claim_count where workshop_id is null limit 500) r")
                    .query(Long.class)
                    .single();
            if (rows == 500) {
                fold();
            }
        } catch (DataAccessException e) {
            LOG.warn(
                    "The counts of the desk were not folded; they stay right and are folded later. {}", e.getMessage());
        }
    }

    @PreDestroy
    void stop() throws InterruptedException {
        folder.shutdownNow();
        folder.awaitTermination(5, TimeUnit.SECONDS);
    }
}
