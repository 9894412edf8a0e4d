package org.voltdocket.insight.analysis;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.insight.InsightQuery;
import org.voltdocket.insight.TopicAnalysis.CaseFilter;
import org.voltdocket.insight.estimate.Lifetimes;

/**
 * Service lives in months: claims by the day of sale, and from the uploaded sales numbers all that are still in service, each
 * counted from the middle of the month of its sale. A claim whose type, batch and month of sale no sales number covers is left
 * out, because the number sold is not known.
 */
@Component
class ServiceLifeRepository {

    static final double DAYS_A_MONTH = 365.25 / 12;

    /** A battery claimed on the day of its sale has lived half a day. */
    private static final double LEAST = 0.5 / DAYS_A_MONTH;

    private static final String COVERED = "exists (select 1 from current_sold_month s where s.type = i.type"
            + " and s.batch = i.batch and s.month = date_trunc('month', i.sold_on)::date)";

    private final JdbcClient db;

    ServiceLifeRepository(JdbcClient db) {
        this.db = db;
    }

    /**
     * Batteries of one type or batch.
     *
     * @param key type, or type and batch parted by a blank
     */
    record Group(String key, String name, Lifetimes lives) {}

    private record Sold(String key, LocalDate month, long sold) {}

    private record Claimed(String key, LocalDate sold, LocalDate claimed) {}

    /** Groups that were sold, by key. */
    List<Group> groups(InsightQuery query) {
        return groups(query, query.by().equals("batch"));
    }

    /** By batch, whatever the grouping of the query. */
    List<Group> batches(InsightQuery query) {
        return groups(query, true);
    }

    private List<Group> groups(InsightQuery query, boolean byBatch) {
        Map<String, Lifetimes.Collector> lives = collect(query, byBatch);
        List<Group> groups = new ArrayList<>();
        lives.forEach((key, collector) -> groups.add(new Group(key, key, collector.lives())));
        return groups;
    }

    /** All together; empty where nothing was sold. */
    Optional<Lifetimes> together(InsightQuery query) {
        Lifetimes.Collector all = new Lifetimes.Collector();
        for (Group group : groups(query)) {
            for (Lifetimes.At at : group.lives().ages()) {
                all.failed(at.age(), at.failed()).alive(at.age(), at.alive());
            }
        }
        return Optional.of(all.lives()).filter(lives -> lives.watched() > 0);
    }

    /** Claims with a product whose sale is not known well enough. */
    long leftOut(InsightQuery query) {
        return db.sql(
                        "select count(*) from insight_case i where i.claimed_at < :to and i.type is not null and (i.sold_on is null"
                                + " or not " + COVERED + ")")
                .param("to", query.to().plusDays(1).atStartOfDay().atOffset(ZoneOffset.UTC))
                .query(Long.class)
                .single();
    }

    Optional<CaseFilter> filter(InsightQuery query, String key) {
        CaseFilter all = new CaseFilter(
                        "i.claimed_at < :to",
                        Map.of("to", query.to().plusDays(1).atStartOfDay().atOffset(ZoneOffset.UTC)))
                .and(COVERED);
        int blank = key.indexOf(' ');
        return Optional.of(
                blank < 0
                        ? all.and("i.type = :type", "type", key)
                        : all.and("i.type = :type", "type", key.substring(0, blank))
                                .and("i.batch = :batch", "batch", key.substring(blank + 1)));
    }

    private SortedMap<String, Lifetimes.Collector> collect(InsightQuery query, boolean byBatch) {
        String key = byBatch ? "type || ' ' || batch" : "type";
        SortedMap<String, Lifetimes.Collector> lives = new TreeMap<>();
        Map<String, Long> claimedOf = new LinkedHashMap<>();
        for (Claimed one : claimed(query, key)) {
            double age = ChronoUnit.DAYS.between(one.sold(), one.claimed()) / DAYS_A_MONTH;
            if (age >= 0) {
                lives.computeIfAbsent(one.key(), none -> new Lifetimes.Collector())
                        .failed(Math.max(LEAST, age), 1);
                claimedOf.merge(one.key() + one.sold().withDayOfMonth(1), 1L, Long::sum);
            }
        }
        for (Sold one : sold(query, key)) {
            long alive = one.sold() - claimedOf.getOrDefault(one.key() + one.month(), 0L);
            double age = ChronoUnit.DAYS.between(one.month().withDayOfMonth(15), query.to()) / DAYS_A_MONTH;
            if (alive > 0 && age > 0) {
                lives.computeIfAbsent(one.key(), none -> new Lifetimes.Collector())
                        .alive(age, alive);
            }
        }
        return lives;
    }

    private List<Claimed> claimed(InsightQuery query, String key) {
        return db.sql("select " + key.replace("type", "i.type").replace("batch", "i.batch")
                        + " as key, i.sold_on, (i.claimed_at at time zone 'UTC')::date as claimed_on from insight_case i"
                        + " where i.claimed_at < :to and i.sold_on is not null and " + COVERED + " order by 1, 2, 3")
                .param("to", query.to().plusDays(1).atStartOfDay().atOffset(ZoneOffset.UTC))
                .query((row, at) -> new Claimed(
                        row.getString("key"),
                        row.getObject("sold_on", LocalDate.class),
                        row.getObject("claimed_on", LocalDate.class)))
                .list();
    }

    private List<Sold> sold(InsightQuery query, String key) {
        return db.sql("select " + key + " as key, month, sum(sold) as sold from current_sold_month"
                        + " where month <= :to group by 1, 2 order by 1, 2")
                .param("to", query.to())
                .query((row, at) ->
                        new Sold(row.getString("key"), row.getObject("month", LocalDate.class), row.getLong("sold")))
                .list();
    }
}
