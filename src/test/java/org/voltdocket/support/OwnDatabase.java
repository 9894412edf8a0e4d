package org.voltdocket.support;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;

/** A durable PostgreSQL that a test may kill and start again, always at the same port. */
public final class OwnDatabase implements AutoCloseable {

    private final Path folder;
    private final int port;
    private final PostgresPrograms installed;
    private final List<String> settings;
    private EmbeddedPostgres server;
    private Process process;

    /** The embedded server, of the version that the demo has. */
    public OwnDatabase(Path folder) throws IOException {
        this(folder, null);
    }

    /** The server that the system's packages installed. */
    public OwnDatabase(Path folder, PostgresPrograms installed) throws IOException {
        this(folder, installed, List.of());
    }

    /** The same with more settings of the server. */
    public OwnDatabase(Path folder, PostgresPrograms installed, List<String> settings) throws IOException {
        this.folder = folder;
        this.installed = installed;
        this.settings = settings;
        try (ServerSocket free = new ServerSocket(0)) {
            this.port = free.getLocalPort();
        }
        start();
    }

    public String url() {
        return "jdbc:postgresql://127.0.0.1:" + port + "/postgres";
    }

    /** As PostgreSQL's own programs want it. */
    public String uri() {
        return "postgresql://postgres@127.0.0.1:" + port + "/postgres";
    }

    public int port() {
        return port;
    }

    public Connection connect() throws SQLException {
        return DriverManager.getConnection(url(), "postgres", "");
    }

    /** What a query of one number says. */
    public long number(String sql) {
        try (Connection connection = connect();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            rows.next();
            return rows.getLong(1);
        } catch (SQLException e) {
            throw new IllegalStateException(sql, e);
        }
    }

    /** Starts it, again where it was killed: its own recovery runs. */
    public void start() throws IOException {
        long until = System.nanoTime() + Duration.ofSeconds(60).toNanos();
        while (true) {
            try {
                if (installed == null) {
                    embedded();
                } else {
                    byPackage();
                }
                return;
            } catch (IOException | IllegalStateException e) {
                if (System.nanoTime() > until) {
                    throw e; // what was killed had time to go
                }
                pause();
            }
        }
    }

    private void embedded() throws IOException {
        server = EmbeddedPostgres.builder()
                .setDataDirectory(folder.resolve("database"))
                .setOverrideWorkingDirectory(folder.resolve("programs").toFile())
                .setCleanDataDirectory(false)
                .setPort(port)
                .setServerConfig("fsync", "on")
                .setServerConfig("synchronous_commit", "on")
                .setServerConfig("unix_socket_directories", "")
                .setPGStartupWait(Duration.ofSeconds(60))
                .start();
    }

    private void byPackage() throws IOException {
        Path log = folder.resolve("database.log");
        if (process == null || !process.isAlive()) {
            process = installed.serve(Files.createDirectories(folder).resolve("database"), port, log, settings);
        }
        try (Connection connection = connect()) {
            connection.isValid(10);
        } catch (SQLException e) {
            throw new IOException(Files.readString(log), e);
        }
    }

    /** Ends it as a power cut would. */
    public void kill() throws IOException {
        Path pidFile = folder.resolve("database").resolve("postmaster.pid");
        long pid = Long.parseLong(Files.readAllLines(pidFile).get(0).strip());
        ProcessHandle.of(pid).ifPresent(ProcessHandle::destroyForcibly);
        if (installed != null) {
            return;
        }
        try {
            server.close(); // nothing is left to stop; this gives the library's own lock back
        } catch (IOException | IllegalStateException dead) {
            // as it should be
        }
    }

    private static void pause() {
        try {
            Thread.sleep(500);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() throws IOException {
        if (installed == null) {
            server.close();
            return;
        }
        process.destroy();
        try {
            process.waitFor();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
