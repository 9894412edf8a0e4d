package org.voltdocket.server.startup;

import java.util.Optional;
import org.flywaydb.core.Flyway;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.autoconfigure.condition.ConditionalOnMissingBean;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.flyway.autoconfigure.FlywayMigrationStrategy;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.Environment;

/**
 * Runs the migrations as the owner of the tables ({@code spring.flyway.user}) and gives the server's own role
 * ({@code spring.datasource.username}) what it needs. Without an owner both are one role. A server with
 * {@code voltdocket.migrate=false} knows no owner: it only checks that {@code --migrate} has run.
 */
@Configuration(proxyBeanMethods = false)
public class DatabaseMigration {

    @Bean
    @ConditionalOnMissingBean
    FlywayConnectionDetails migrationConnection(JdbcConnectionDetails server, Environment environment) {
        return new Owner(
                server.getJdbcUrl(),
                environment.getProperty(
                        "spring.flyway.user",
                        Optional.ofNullable(server.getUsername()).orElse("")),
                Optional.ofNullable(environment.getProperty("spring.flyway.password"))
                        .orElse(server.getPassword()));
    }

    @Bean
    FlywayMigrationStrategy migration(
            JdbcConnectionDetails server, @Value("${voltdocket.migrate:true}") boolean migrate) {
        return flyway -> {
            if (migrate) {
                flyway.migrate();
                ServerRole.prepare(flyway.getConfiguration().getDataSource(), server);
            } else {
                checked(flyway).validate();
            }
        };
    }

    /** The same with the rights of the server's role, which may read which migrations have run. */
    private static Flyway checked(Flyway flyway) {
        return Flyway.configure()
                .configuration(flyway.getConfiguration())
                .initSql("set role voltdocket_staff")
                .load();
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

        @Override
        public String toString() {
            return url;
        }
    }
}
