package org.voltdocket.demo.database;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Profile;
import org.voltdocket.server.startup.StartupException;

/**
 * The demo's PostgreSQL: embedded, with durable commits, reachable from this machine only and with a password.
 *
 * <p>Beans close in reverse order: the connection pool, then the supervisor, the database, and the lock of the directory.
 */
@Configuration(proxyBeanMethods = false)
@Profile("demo")
class EmbeddedDatabase {

    private static final String OWNER = "postgres";
    private static final String SERVER = "voltdocket_server";

    @Bean(destroyMethod = "close")
    DataDirectory dataDirectory(@Value("${voltdocket.data}") Path where) {
        return DataDirectory.take(where);
    }

    @Bean(destroyMethod = "close")
    EmbeddedPostgres embeddedPostgres(DataDirectory data) throws IOException {
        OrphanedPostgres.stop(data.database());
        data.putAsideUnfinished();
        Path passwordFile = data.passwordFile();
        try {
            EmbeddedPostgres server = builder(data, passwordFile).start();
            data.markFinished();
            return server;
        } catch (IOException | IllegalStateException e) {
            throw new StartupException(
                    "The embedded database in " + data.root() + " does not start: " + e.getMessage(),
                    "Look for its own message above (logging.level.io.zonky=info shows more). The folder was not changed; "
                            + "to begin anew, move it away.",
                    e);
        }
    }

    @Bean(destroyMethod = "close")
    DatabaseSupervisor databaseSupervisor(DataDirectory data, EmbeddedPostgres server) {
        return new DatabaseSupervisor(data, server.getPort());
    }

    private static EmbeddedPostgres.Builder builder(DataDirectory data, Path passwordFile) throws IOException {
        return EmbeddedPostgres.builder()
                .setDataDirectory(data.database())
                .setCleanDataDirectory(false)
                .setOverrideWorkingDirectory(data.programs().toFile())
                .setRegisterShutdownHook(false)
                .setPGStartupWait(Duration.ofSeconds(60))
                // options of initdb, where the last one counts: a password from the first start
                .setLocaleConfig("auth", "scram-sha-256")
                .setLocaleConfig("pwfile", passwordFile.toString())
                .setLocaleConfig("locale", "C.UTF-8")
                .setConnectConfig("password", Files.readString(passwordFile))
                // the library switches these off, for tests
                .setServerConfig("fsync", "on")
                .setServerConfig("synchronous_commit", "on")
                .setServerConfig("full_page_writes", "on")
                .setServerConfig("unix_socket_directories", "")
                .setServerConfig("listen_addresses", "127.0.0.1")
                .setServerConfig("max_connections", "64");
    }

    @Bean
    JdbcConnectionDetails embeddedConnection(EmbeddedPostgres server, DataDirectory data) throws IOException {
        return new Connection(url(server), SERVER, Files.readString(data.passwordFile()));
    }

    @Bean
    FlywayConnectionDetails embeddedOwner(EmbeddedPostgres server, DataDirectory data) throws IOException {
        return new Owner(url(server), Files.readString(data.passwordFile()));
    }

    private static String url(EmbeddedPostgres server) {
        return "jdbc:postgresql://127.0.0.1:" + server.getPort() + "/postgres";
    }

    private record Owner(String url, String password) implements FlywayConnectionDetails {

        @Override
        public String getJdbcUrl() {
            return url;
        }

        @Override
        public String getUsername() {
            return OWNER;
        }

        @Override
        public String getPassword() {
            return password;
        }

        @Override
        public String toString() {
            return url;
        }
    }

    private record Connection(String url, String user, String password) implements JdbcConnectionDetails {

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

        @Override
        public String toString() {
            return url;
        }
    }
}
