package org.voltdocket.server.monitoring;

import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.binder.MeterBinder;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.pending.PendingAssessments;
import org.voltdocket.evidence.original.ObjectStoreConfiguration;

/** Numbers of the whole server for a collector of metrics, read from the database when it asks. */
@Component
class ServerMetrics implements MeterBinder {

    private static final Logger LOG = LoggerFactory.getLogger(ServerMetrics.class);

    private final JdbcClient db;
    private final PendingAssessments pending;
    private final ObjectStoreConfiguration originals;

    ServerMetrics(JdbcClient db, PendingAssessments pending, ObjectStoreConfiguration originals) {
        this.db = db;
        this.pending = pending;
        this.originals = originals;
    }

    @Override
    public void bindTo(MeterRegistry registry) {
        gauge(
                registry,
                "assessments.due",
                "cases whose last change is not assessed",
                () -> pending.counts().all());
        gauge(
                registry,
                "assessments.failed",
                "cases that could not be assessed",
                () -> pending.counts().failed());
        gauge(
                registry,
                "reassessments.open",
                "reassessment runs that have not ended",
                "select count(*) from open_reassessment");
        gauge(
                registry,
                "evidence.refused.today",
                "files refused since midnight UTC",
                "select count(*) from trail_event where act = 'evidence-refused' and happened_at >="
                        + " date_trunc('day', clock_timestamp() at time zone 'UTC') at time zone 'UTC'");
        gauge(
                registry,
                "backup.age.seconds",
                "since the last backup that was marked; none where there is none",
                "select extract(epoch from clock_timestamp() - max(taken_at)) from backup_taken");
        gauge(
                registry,
                "restore.tested.age.seconds",
                "since the last tested restore that was marked; none where there is none",
                "select extract(epoch from clock_timestamp() - max(tested_at)) from restore_tested");
        gauge(registry, "database.bytes", "size of the database", "select pg_database_size(current_database())");
        Gauge.builder("voltdocket.originals.store.up", this::storeUp)
                .description(
                        "1 where the store of original files answers, 0 where it does not; none where none is named")
                .register(registry);
    }

    private Double storeUp() {
        return originals.get().map(store -> store.state().answers() ? 1.0 : 0.0).orElse(Double.NaN);
    }

    private void gauge(MeterRegistry registry, String name, String what, String sql) {
        gauge(
                registry,
                name,
                what,
                () -> db.sql(sql)
                        .query((row, n) -> row.getObject(1) == null ? Double.NaN : row.getDouble(1))
                        .single());
    }

    private static void gauge(MeterRegistry registry, String name, String what, Supplier<Number> value) {
        Gauge.builder("voltdocket." + name, () -> read(value)).description(what).register(registry);
    }

    private static Number read(Supplier<Number> value) {
        try {
            return value.get();
        } catch (RuntimeException e) {
            LOG.warn("a metric cannot be read: {}", e.getMessage());
            return Double.NaN;
        }
    }
}
