package org.voltdocket.support;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/** One real PostgreSQL for the whole test run: a container where an engine answers, an embedded server elsewhere. */
public final class TestDatabase implements JdbcConnectionDetails {

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
            return new TestDatabase(server.getJdbcUrl("postgres", "postgres"), "postgres", "");
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
        return user;
    }

    @Override
    public String getPassword() {
        return password;
    }
}
