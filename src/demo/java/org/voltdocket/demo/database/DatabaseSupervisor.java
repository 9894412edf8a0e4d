package org.voltdocket.demo.database;

import io.zonky.test.db.postgres.util.LinuxUtils;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;

/**
 * Starts the embedded PostgreSQL again when it has ended, for example because it was killed or its disk was full, and tries
 * until it runs. It gets the same port and options, so the connection pool finds it again by itself.
 *
 * <p>The health is down while PostgreSQL has not run for {@link #PATIENCE}.
 */
final class DatabaseSupervisor implements AutoCloseable, HealthIndicator {

    private static final Logger LOG = LoggerFactory.getLogger(DatabaseSupervisor.class);
    private static final Duration INTERVAL = Duration.ofSeconds(1);
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(15);
    private static final Duration PATIENCE = Duration.ofSeconds(30);
    private static final Pattern OPTION = Pattern.compile("\"([^\"]*)\"");

    private final DataDirectory data;
    private final int port;
    private final Thread thread = new Thread(this::run, "embedded-database-supervisor");
    private volatile long lastSeenNanos = System.nanoTime();

    DatabaseSupervisor(DataDirectory data, int port) {
        this.data = data;
        this.port = port;
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public Health health() {
        boolean up = System.nanoTime() - lastSeenNanos < PATIENCE.toNanos();
        return (up ? Health.up() : Health.down()).build();
    }

    private void run() {
        Duration wait = INTERVAL;
        boolean down = false;
        while (!thread.isInterrupted()) {
            try {
                Thread.sleep(wait.toMillis());
                if (accepts()) {
                    if (down) {
                        LOG.info("The embedded database runs again.");
                    }
                    down = false;
                    lastSeenNanos = System.nanoTime();
                    wait = INTERVAL;
                    continue;
                }
                if (!down) {
                    LOG.error("The embedded database has ended. It is started again; its messages are in {}.", log());
                }
                down = true;
                restart();
                wait = min(wait.multipliedBy(2), LONGEST_WAIT);
            } catch (InterruptedException e) {
                return;
            } catch (IOException | RuntimeException e) {
                LOG.error("The embedded database cannot be started yet: {}", e.toString());
                wait = min(wait.multipliedBy(2), LONGEST_WAIT);
            }
        }
    }

    private static Duration min(Duration a, Duration b) {
        return a.compareTo(b) < 0 ? a : b;
    }

    /** Whether PostgreSQL accepts connections; during its own recovery it does, and refuses them by name. */
    private boolean accepts() {
        try (Socket socket = new Socket()) {
            socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), 1000);
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    /** Runs the command line that PostgreSQL noted at its last start; returns when it accepts connections or has ended. */
    private void restart() throws IOException, InterruptedException {
        OrphanedPostgres.stop(data.database());
        String noted = Files.readString(data.database().resolve("postmaster.opts"));
        List<String> command = new ArrayList<>();
        if (LinuxUtils.isUnshareAvailable()) {
            command.addAll(List.of("unshare", "-U")); // PostgreSQL refuses to run as root
        }
        command.add(noted.substring(0, noted.indexOf(" \"")));
        Matcher option = OPTION.matcher(noted);
        while (option.find()) {
            command.add(option.group(1));
        }
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log().toFile()))
                .start();
        while (!accepts() && !process.waitFor(100, TimeUnit.MILLISECONDS)) {
            Thread.onSpinWait();
        }
    }

    private Path log() {
        return data.root().resolve("database.log");
    }

    @Override
    public void close() throws InterruptedException {
        thread.interrupt();
        thread.join(5000);
    }
}
