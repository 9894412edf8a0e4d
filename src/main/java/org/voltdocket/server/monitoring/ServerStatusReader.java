package org.voltdocket.server.monitoring;

import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import io.micrometer.core.instrument.distribution.HistogramSnapshot;
import io.micrometer.core.instrument.distribution.ValueAtPercentile;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.pending.PendingAssessments;
import org.voltdocket.evidence.original.ObjectStoreConfiguration;
import org.voltdocket.server.limits.DiskReserve;
import org.voltdocket.server.monitoring.ServerStatus.Count;
import org.voltdocket.server.monitoring.ServerStatus.Heap;
import org.voltdocket.server.monitoring.ServerStatus.Slow;
import org.voltdocket.server.monitoring.ServerStatus.Store;

/** Gathers the board: from the database what all nodes share, from this node what is its own. */
@Component
class ServerStatusReader {

    private static final int SLOW = 12;

    private final JdbcClient db;
    private final PendingAssessments pending;
    private final MeterRegistry meters;
    private final ObjectStoreConfiguration originals;
    private final DiskReserve reserve;
    private final BackupRepository backups;

    ServerStatusReader(
            JdbcClient db,
            PendingAssessments pending,
            MeterRegistry meters,
            ObjectStoreConfiguration originals,
            DiskReserve reserve,
            BackupRepository backups) {
        this.db = db;
        this.pending = pending;
        this.originals = originals;
        this.backups = backups;
        this.meters = meters;
        this.reserve = reserve;
    }

    private record Tasks(int waiting, int atWork) {}

    @Transactional(readOnly = true)
    ServerStatus read() {
        PendingAssessments.Counts due = pending.counts();
        Tasks tasks = db.sql("select count(*) filter (where not picked and execution_time < clock_timestamp()),"
                        + " count(*) filter (where picked) from scheduled_tasks")
                .query((row, n) -> new Tasks(row.getInt(1), row.getInt(2)))
                .single();
        return new ServerStatus(
                due.all(),
                due.failed(),
                due.oldest(),
                tasks.waiting(),
                tasks.atWork(),
                count("select count(*) from unsent_mail where failed_at is null"),
                count("select count(*) from unsent_mail where failed_at is not null"),
                refusals(),
                slow(),
                reserve.disks(),
                db.sql("select pg_database_size(current_database())")
                        .query(Long.class)
                        .single(),
                originals
                        .get()
                        .map(store -> new Store(store.where(), store.state().trouble())),
                backups.read(),
                heap());
    }

    private int count(String sql) {
        return db.sql(sql).query(Integer.class).single();
    }

    private List<Count> refusals() {
        return db.sql("""
                        select coalesce(details::json ->> 'reason', '') as reason, count(*) from trail_event
                        where act = 'evidence-refused'
                            and happened_at >= date_trunc('day', clock_timestamp() at time zone 'UTC') at time zone 'UTC'
                        group by 1 order by 2 desc, 1""")
                .query((row, n) -> new Count(row.getString(1), row.getInt(2)))
                .list();
    }

    /** Routes by their slowest status: a page and its refusal are one route. */
    private List<Slow> slow() {
        Map<String, Slow> byRoute = new HashMap<>();
        for (Timer timer : meters.find("http.server.requests").timers()) {
            String route = timer.getId().getTag("uri");
            String method = timer.getId().getTag("method");
            boolean page = route != null && route.startsWith("/") && !route.matches("/actuator.*|/\\*\\*|/webjars.*");
            if (!page || timer.count() == 0) {
                continue;
            }
            HistogramSnapshot shot = timer.takeSnapshot();
            double p95 = Arrays.stream(shot.percentileValues())
                    .filter(value -> value.percentile() == 0.95)
                    .mapToDouble((ValueAtPercentile value) -> value.value(TimeUnit.MILLISECONDS))
                    .findFirst()
                    .orElse(0);
            double most = shot.max(TimeUnit.MILLISECONDS);
            // the percentile is one of a bucket, whose upper end may lie above all there was
            Slow one = new Slow(method, route, timer.count(), Math.min(p95, most), most);
            byRoute.merge(
                    method + " " + route,
                    one,
                    (a, b) -> new Slow(
                            a.method(),
                            a.route(),
                            a.count() + b.count(),
                            Math.max(a.p95Ms(), b.p95Ms()),
                            Math.max(a.mostMs(), b.mostMs())));
        }
        return byRoute.values().stream()
                .sorted(Comparator.comparingDouble(Slow::p95Ms).reversed().thenComparing(Slow::route))
                .limit(SLOW)
                .toList();
    }

    private static Heap heap() {
        Runtime runtime = Runtime.getRuntime();
        return new Heap(runtime.totalMemory() - runtime.freeMemory(), runtime.maxMemory());
    }
}
