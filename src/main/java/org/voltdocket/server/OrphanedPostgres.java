package org.voltdocket.server;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A PostgreSQL that went on alone because its server was killed. Only to be looked for while the folder's lock is held. */
final class OrphanedPostgres {

    private static final Logger LOG = LoggerFactory.getLogger(OrphanedPostgres.class);
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    private OrphanedPostgres() {}

    /**
     * Asks an orphan of this database to stop, and waits until it has; removes a pid file that points nowhere.
     *
     * @throws StartupException where it does not stop within a minute
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
        orphan.get().destroy(); // SIGTERM: PostgreSQL takes no new connection and writes everything down
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

    /** Whether the process is a PostgreSQL of this folder, and not a stranger who got the number since. */
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

    /** PostgreSQL removes its pid file last; the process itself may linger as a zombie where nobody collects it. */
    private static void await(ProcessHandle orphan, Path database) {
        long until = System.nanoTime() + PATIENCE.toNanos();
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
