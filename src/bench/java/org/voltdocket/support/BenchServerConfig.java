package org.voltdocket.support;

import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.core.env.Environment;
import org.voltdocket.access.AccountService;

/** What a benchmark adds to the server: an embedded database, or the one that {@code voltdocket.bench.url} names. */
@TestConfiguration(proxyBeanMethods = false)
class BenchServerConfig {

    @Bean
    JdbcConnectionDetails benchDatabase() {
        String url = System.getProperty("voltdocket.bench.url");
        return url == null ? TestDatabase.shared() : new Named(url);
    }

    @Bean
    Server server(AccountService accounts, Environment environment) {
        return new Server(accounts, environment);
    }

    private record Named(String url) implements JdbcConnectionDetails {

        @Override
        public String getJdbcUrl() {
            return url;
        }

        @Override
        public String getUsername() {
            return "postgres";
        }

        @Override
        public String getPassword() {
            return "";
        }
    }
}
