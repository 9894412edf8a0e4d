package org.voltdocket.server.monitoring;

import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.voltdocket.server.monitoring.ServerStatus.Backup;
import org.voltdocket.server.monitoring.ServerStatus.Backups;
import org.voltdocket.server.monitoring.ServerStatus.TestedRestore;

/** When backups were taken and their restore was tested, as {@code db/archive} marks them. */
@Repository
class BackupRepository {

    /** After this a restore has to be tested again; common practice. */
    static final Duration TEST_INTERVAL = Duration.ofDays(31);

    private static final Logger LOG = LoggerFactory.getLogger(BackupRepository.class);

    private final JdbcClient db;
    private final Clock clock;

    BackupRepository(JdbcClient db, Clock clock) {
        this.db = db;
        this.clock = clock;
    }

    Backups read() {
        Optional<Backup> taken = db.sql("select taken_at, file, bytes from backup_taken order by ordinal desc limit 1")
                .query((row, n) -> new Backup(row.getTimestamp(1).toInstant(), row.getString(2), row.getLong(3)))
                .optional();
        Optional<TestedRestore> tested = db.sql(
                        "select tested_at, file, seconds from restore_tested order by ordinal desc limit 1")
                .query((row, n) -> new TestedRestore(row.getTimestamp(1).toInstant(), row.getString(2), row.getInt(3)))
                .optional();
        Instant due = clock.instant().minus(TEST_INTERVAL);
        return new Backups(
                taken, tested, tested.map(test -> test.testedAt().isBefore(due)).orElse(true));
    }

    /** Logs a warning if no restore was tested lately. */
    void warn() {
        Backups backups = read();
        if (backups.overdue()) {
            LOG.warn(
                    "No restore of a backup was tested in the last {} days (last: {}). Run db/archive test, see /manual/running.",
                    TEST_INTERVAL.toDays(),
                    backups.tested().map(test -> test.testedAt().toString()).orElse("never"));
        }
    }

    /** The scheduler's task that warns once a day, on one node. */
    @Configuration(proxyBeanMethods = false)
    static class Warning {

        @Bean
        Task<Void> restoreTestWarning(BackupRepository backups) {
            return Tasks.recurring("restore-test-warning", FixedDelay.of(Duration.ofDays(1)))
                    .execute((instance, context) -> backups.warn());
        }
    }
}
