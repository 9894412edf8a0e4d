package org.voltdocket.support;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/**
 * One real PostgreSQL for the whole test run: a container where an engine answers, an embedded server elsewhere. The server
 * under test signs in with the restricted role that real use has; a test that tampers connects as the owner.
 */
public final class TestDatabase implements JdbcConnectionDetails {

    /** Role of the server; the migrations of the first server create it. */
    public static final String SERVER = "voltdocket_server";

    private static final String SERVER_PASSWORD = "test-only server";

    private static TestDatabase shared;

    private final String url;
    private final String user;
    private final String password;

    private TestDatabase(String url, String user, String password) {
        this.url = url;
        this.user = user;
        this.password = password;
    }

    /** The shared database, started at the first call and stopped with the run. */
    public static synchronized TestDatabase shared() {
        if (shared == null) {
            shared = engineAnswers() ? container() : embedded();
        }
        return shared;
    }

    private static boolean engineAnswers() {
        // looked at first, because the library takes its time and logs at length where there is no engine
        if (System.getenv("DOCKER_HOST") == null && !Files.exists(Path.of("/var/run/docker.sock"))) {
            return false;
        }
        try {
            return DockerClientFactory.instance().isDockerAvailable();
        } catch (RuntimeException | LinkageError e) {
            return false;
        }
    }

    @SuppressWarnings("resource") // stopped by Testcontainers at the end of the run
    private static TestDatabase container() {
        PostgreSQLContainer container = new PostgreSQLContainer("postgres:18-alpine");
        container.start();
        return new TestDatabase(container.getJdbcUrl(), container.getUsername(), container.getPassword());
    }

    @SuppressWarnings("resource") // stopped by its own shutdown hook
    private static TestDatabase embedded() {
        try {
            EmbeddedPostgres server = EmbeddedPostgres.builder()
                    .setPGStartupWait(Duration.ofSeconds(60))
                    .start();
            // without the user that the library puts into the address, which would take precedence
            String url = "jdbc:postgresql://localhost:" + server.getPort() + "/postgres";
            return new TestDatabase(url, "postgres", "");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public String getJdbcUrl() {
        return url;
    }

    @Override
    public String getUsername() {
        return SERVER;
    }

    @Override
    public String getPassword() {
        return SERVER_PASSWORD;
    }

    /** The connection of the owner, who runs the migrations. */
    public FlywayConnectionDetails owner() {
        return new Owner(url, user, password);
    }

    /** Connects to a database of this server as the owner of all tables. */
    public Connection connectAsOwner(String database) throws SQLException {
        return DriverManager.getConnection(url(database), user, password);
    }

    /** The address of another database of this server. */
    public String url(String database) {
        return url.replaceFirst("(//[^/]+/)[^?]+", "$1" + database);
    }

    private record Owner(String url, String user, String password) implements FlywayConnectionDetails {

        @Override
        public String getJdbcUrl() {
            return url;
        }

        @Override
        public String getUsername() {
            return user;
        }

        @Override
        public String getPassword() {
            return password;
        }
    }
}
