package org.voltdocket.demo.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.voltdocket.server.startup.StartupException;

/** Finds and stops a PostgreSQL that still runs although its server was killed. Use it only while holding the directory's lock. */
final class OrphanedPostgres {

    private static final Logger LOG = LoggerFactory.getLogger(OrphanedPostgres.class);
    private static final Duration TIMEOUT = Duration.ofSeconds(60);

    private OrphanedPostgres() {}

    /**
     * Asks an orphaned process of this database to stop and waits for it; deletes a stale pid file.
     *
     * @throws StartupException if the process does not stop within a minute
     */
    static void stop(Path database) throws IOException {
        Path pidFile = database.resolve("postmaster.pid");
        if (!Files.exists(pidFile)) {
            return;
        }
        Optional<ProcessHandle> orphan = pid(pidFile).flatMap(ProcessHandle::of).filter(p -> serves(p, database));
        if (orphan.isEmpty()) {
            Files.deleteIfExists(pidFile);
            return;
        }
        LOG.info(
                "The last server was killed; its database (process {}) still runs and is stopped first.",
                orphan.get().pid());
        orphan.get().destroy(); // SIGTERM: PostgreSQL accepts no new connections and writes all data to disk
        await(orphan.get(), database);
        Files.deleteIfExists(pidFile);
    }

    private static Optional<Long> pid(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file);
        try {
            return lines.isEmpty()
                    ? Optional.empty()
                    : Optional.of(Long.parseLong(lines.get(0).strip()));
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    /** Whether the process is a PostgreSQL of this directory, and not another one that got the same number. */
    private static boolean serves(ProcessHandle process, Path database) {
        ProcessHandle.Info info = process.info();
        boolean postgres = info.command()
                .map(command -> Path.of(command).getFileName().toString().startsWith("postgres"))
                .orElse(false);
        return postgres
                && info.commandLine()
                        .map(line -> line.contains(database.toString()))
                        .orElse(true);
    }

    /** PostgreSQL deletes its pid file last; the process may remain as a zombie. */
    private static void await(ProcessHandle orphan, Path database) {
        long until = System.nanoTime() + TIMEOUT.toNanos();
        while (Files.exists(database.resolve("postmaster.pid")) && orphan.isAlive() && serves(orphan, database)) {
            if (System.nanoTime() > until) {
                throw new StartupException(
                        "The database of a killed server still runs as process " + orphan.pid() + " and does not stop.",
                        "Stop that process (kill -INT " + orphan.pid() + "), then start again.");
            }
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new StartupException("Interrupted while the old database was stopping.", "Start again.", e);
            }
        }
    }
}
