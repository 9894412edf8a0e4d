package org.voltdocket.support;

import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.core.env.Environment;
import org.voltdocket.access.Accounts;

/** What {@link ServerTest} adds to the server. */
@TestConfiguration(proxyBeanMethods = false)
class ServerTestConfig {

    @Bean
    JdbcConnectionDetails testDatabase() {
        return TestDatabase.shared();
    }

    @Bean
    Server server(Accounts accounts, Environment environment) {
        return new Server(accounts, environment);
    }
}
